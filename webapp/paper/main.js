/** What passes a plan on, and all that goes to paper: loaded once one of them is wanted. */
export { showCard } from "./card.js";
export { MeasuringSheet } from "./measuring_sheet.js";
export { printOrders } from "./orders.js";
export { Share } from "./share.js";
export { TagSheet } from "./tag_sheet.js";
