/** What goes to paper alone, and what is asked before it does: loaded once something is to be printed. */
export { printCard } from "./card.js";
export { printOrders } from "./orders.js";
export { TagSheet } from "./tag_sheet.js";
