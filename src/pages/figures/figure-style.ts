/**
 * Style of the figures: ink on paper in both schemes and in print. A bowl has a pattern and its letter before it has a
 * colour; the colours are apart in lightness too.
 */
export const FIGURE_STYLE = `
:root { --bowl-1: #1d4e63; --bowl-2: #9a4314; --bowl-3: #4a6420; --bowl-4: #6b3a75; --bowl-5: #7d5c00; --bowl-6: #4d4a45; }
@media (prefers-color-scheme: dark) {
  :root { --bowl-1: #8fc7dc; --bowl-2: #f0a070; --bowl-3: #b4d27c; --bowl-4: #d9aee2; --bowl-5: #e3c562; --bowl-6: #cdc8bd; }
}
.figure { margin: .9rem 0; overflow-x: clip; }
.figure svg { display: block; width: 100%; height: auto; overflow: visible; font-family: system-ui, sans-serif; }
figcaption { margin-top: .3rem; color: var(--soft); font-size: .88rem; line-height: 1.45; }
.figure text { fill: var(--ink); font-size: 14px; }
.figure text.small { font-size: 12px; fill: var(--soft); }
.figure text.bowl { font-size: 16px; font-weight: 700; }
.figure text.tag { font-size: 13px; font-weight: 600; }
.figure text.event-said { font-weight: 700; fill: var(--mark); }
.ground, .clear { fill: var(--paper); }
.bowl-1 { color: var(--bowl-1); } .bowl-2 { color: var(--bowl-2); } .bowl-3 { color: var(--bowl-3); }
.bowl-4 { color: var(--bowl-4); } .bowl-5 { color: var(--bowl-5); } .bowl-6 { color: var(--bowl-6); }
.whole-mark { fill: currentColor; }
.mark { stroke: currentColor; }
.mark.broad { stroke-width: 3; } .mark.thin { stroke-width: 1.5; }
.out-stroke { stroke: var(--mark); stroke-width: 2; }
.rule { stroke: var(--line); } .axis { stroke: var(--ink); stroke-width: 1.5; }
.bar, .stretch { stroke: var(--ink); stroke-width: 1.2; stroke-linejoin: round; }
.bar.open { stroke-dasharray: 4 3; }
.off-mark { stroke: var(--ink); stroke-width: 4; }
.past { stroke: var(--mark); stroke-width: 1.5; }
.wanted { stroke: var(--ink); stroke-width: 1.2; }
.heat { fill: none; stroke: var(--mark); stroke-width: 1.8; }
.pip:not([fill]) { fill: var(--paper); }
.pip { stroke: var(--ink); stroke-width: 1.6; }
.event { stroke: var(--mark); stroke-width: 2; stroke-dasharray: 2 3; }
.figure .narrow { display: none; }
.panels, .heads { display: grid; grid-template-columns: repeat(auto-fill, minmax(10.5rem, 1fr)); gap: .6rem 1rem; }
.heads { grid-template-columns: repeat(4, minmax(0, 1fr)); }
.outline { fill: none; stroke: var(--ink); stroke-width: 1.6; stroke-linecap: round; stroke-linejoin: round; }
.area { fill: none; stroke: var(--soft); stroke-width: .7; stroke-dasharray: 1 3; }
.all-over, .left-out { stroke: var(--ink); stroke-width: 1; }
.left-out { stroke: var(--mark); }
.section, .section-edge { fill: none; }
.section-edge { stroke: var(--ink); }
.brushed { stroke: var(--ink); stroke-width: 1; }
.leader { fill: none; stroke: var(--soft); stroke-width: .9; }
.along { max-width: 26rem; }
.placement:has(.heads):has(.along) { display: grid; grid-template-columns: minmax(0, 20rem) 1fr; gap: .4rem 1.5rem; align-items: center; }
.placement .heads { grid-column: 1 / -1; }
.one-hair { fill: var(--soft); }
.band { fill: var(--soft); fill-opacity: .2; }
.curve { fill: none; stroke: var(--ink); stroke-width: 2.2; stroke-linejoin: round; }
.look { fill: var(--paper); stroke: var(--ink); stroke-width: 2; }
.span { stroke: var(--ink); stroke-width: 2; }
.off-line { stroke: var(--ink); stroke-dasharray: 5 3; }
.locks, .key { list-style: none; margin: 0; padding: 0; display: flex; flex-wrap: wrap; gap: .3rem 1.2rem; }
.locks li { width: 8.2rem; font-size: .88rem; line-height: 1.35; }
.locks b, .key b { font-weight: 600; }
.hair { stroke: var(--ink); stroke-width: 1; }
.strand { fill: none; stroke: #000; stroke-opacity: .28; stroke-width: 1.2; }
.key li { display: flex; align-items: center; gap: .4rem; }
.figure svg.key-mark { width: 2rem; flex: none; }
.key-bar { stroke: var(--ink); stroke-width: 5; fill: none; }
.key-fill { fill: var(--ink); }
.beside { display: grid; grid-template-columns: repeat(auto-fit, minmax(min(18rem, 100%), 1fr)); gap: 0 1.5rem; align-items: start; }
@media (max-width: 42rem) {
  .figure .wide { display: none; }
  .figure .narrow { display: block; }
  .placement:has(.heads):has(.along) { display: block; }
  .heads { grid-template-columns: repeat(2, minmax(0, 1fr)); }
  .panels { grid-template-columns: repeat(auto-fill, minmax(14rem, 1fr)); gap: .4rem; }
  .panels svg { max-width: 18rem; }
  .figure text { font-size: 15px; }
  .heads { padding-right: .6rem; }
  .heads text.tag { font-size: 16px; }
  .heads text.tag.long { font-size: 14px; }
  .figure text.small { font-size: 13px; }
}
@media print {
  :root { --bowl-1: #000; --bowl-2: #000; --bowl-3: #000; --bowl-4: #000; --bowl-5: #000; --bowl-6: #000; }
  .figure { break-inside: avoid; margin: .3rem 0; }
  .figure svg { print-color-adjust: exact; }
  figcaption { font-size: .8rem; line-height: 1.25; }
  .figure .wide { display: none; }
  .figure .narrow { display: block; }
  .months.figure .wide { display: block; }
  .months.figure .narrow { display: none; }
  .heads { grid-template-columns: repeat(2, 38mm); gap: 1mm 3mm; }
  .heads .bare { display: none; }
  .placement:has(.heads):has(.along) { display: block; }
  .figure .along { max-width: 66mm; }
  .figure .timeline { max-width: 72mm; }
  .panels svg { max-width: 33mm; }
  .panels { grid-template-columns: repeat(2, minmax(0, 1fr)); gap: 1mm 3mm; }
  .beside { display: block; }
  .locks { gap: .1rem .6rem; }
  .locks li { width: 16mm; font-size: .78rem; line-height: 1.15; }
  .key { gap: .05rem .8rem; }
  [aria-labelledby="last-colour"]:has(.heads) { zoom: .86; }
  .part:has(.panels svg:nth-child(3)), .part:has(table ~ table ~ table ~ table) { zoom: .88; }
  .part:has(.panels svg:nth-child(3)):has(table ~ table ~ table ~ table), .part:has(.panels svg:nth-child(5)), .part:has(table ~ table ~ table ~ table ~ table) { zoom: .8; }
}
`;
