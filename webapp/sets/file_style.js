/**
 * How a set looks in a file: type of 22 points (30 px) without serifs, left aligned, lines far apart,
 * nothing slanted, one column (as those with low vision ask for it). On a narrow screen the cells of a row
 * stand below one another. No character of it has a meaning in markup.
 */
export const FILE_STYLE = `
body{max-width:24em;margin:0 auto;padding:1rem;background:#fff;color:#000;font:1.875em/1.5 sans-serif;text-align:left;overflow-wrap:break-word}
h1,h2,h3,h4{line-height:1.25;break-after:avoid}
li,tr,figure{break-inside:avoid}
li{margin-block:.4em}
.caution{padding:.5em;border:3px solid #000}
table{width:100%;border-collapse:collapse}
caption{font-weight:700;text-align:left}
th,td{padding:.3em;border:1px solid #000;text-align:left;vertical-align:top}
figure{margin:1em 0}
svg{width:100%;max-height:80vh}
path{fill:none;stroke:#000;stroke-width:1.2}
path.measure{stroke-dasharray:4 3}
@media screen and (max-width:60em){
table,caption,tbody,tr,th,td{display:block;padding:0;border:0}
thead{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%)}
tr{padding:.5em 0;border-bottom:1px solid #000}
td:not(:only-of-type)::before{content:attr(data-head) ': '}
}
@media print{body{padding:0;font-size:12pt}@page{margin:15mm}}
`;
