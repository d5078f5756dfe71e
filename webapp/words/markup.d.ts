/** The pages of webapp/templates/behind.html as build/site.py renders them, a text for each language. */
declare const markup: string;
export default markup;
