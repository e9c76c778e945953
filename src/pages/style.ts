import { FIGURE_STYLE } from './figures/figure-style.ts';
import { PREP_STYLE } from './prep-style.ts';

/**
 * The style sheet of every page: read at arm's length beside a basin, printed on A4, folded on a phone. Colours are
 * never the only sign of anything; in both schemes text stands at least 7:1 against its ground.
 */
export const STYLE = `
:root {
  color-scheme: light dark;
  --paper: #fbfaf7;
  --ink: #22211e;
  --soft: #55524b;
  --line: #d8d3c7;
  --band: #f1eee6;
  --mark: #7a1f1f;
  --mark-paper: #fbeeea;
  --link: #134a5f;
}
@media (prefers-color-scheme: dark) {
  :root {
    --paper: #191816;
    --ink: #eceae4;
    --soft: #bbb6aa;
    --line: #45423b;
    --band: #24221f;
    --mark: #ffb4a6;
    --mark-paper: #341d19;
    --link: #9fd2e6;
  }
}
* { box-sizing: border-box; }
html { font-size: 106.25%; }
body {
  margin: 0;
  background: var(--paper);
  color: var(--ink);
  font-family: system-ui, sans-serif;
  line-height: 1.6;
  overflow-wrap: anywhere;
}
header, main { max-width: 50rem; margin: 0 auto; padding: 0 1rem; }
header { padding-top: 1.5rem; }
main { padding-bottom: 3rem; }
h1 { margin: 0; font-size: 2.1rem; line-height: 1.2; font-weight: 650; }
header p { margin: .3rem 0 0; color: var(--soft); }
h2 { margin: 2rem 0 .5rem; padding-bottom: .2rem; border-bottom: 2px solid var(--ink); font-size: 1.15rem; line-height: 1.3; }
h3 { margin: 0 0 .6rem; font-size: 1.15rem; line-height: 1.3; }
p { margin: .5rem 0; }
ul { margin: .5rem 0; padding-left: 1.2rem; }
dl { margin: .5rem 0; }
dl > div { display: grid; grid-template-columns: 9rem 1fr; column-gap: .8rem; padding: .12rem 0; }
dt { grid-column: 1; font-weight: 600; color: var(--soft); }
dd { grid-column: 2; margin: 0; min-width: 0; }
code { font: .92em ui-monospace, monospace; white-space: pre-wrap; background: var(--band); padding: 0 .2em; }
.whole { white-space: nowrap; }
a { color: var(--link); }
:focus-visible { outline: 3px solid var(--link); outline-offset: 2px; }
.alerts { margin-top: 1.25rem; padding: .1rem 1rem .6rem; border: 2px solid var(--mark); border-left-width: .7rem; background: var(--mark-paper); }
.alerts h2 { margin-top: .6rem; border-bottom: 0; color: var(--mark); }
.alerts dt { color: var(--mark); }
.caution p, .caution ul { color: var(--soft); font-size: .95rem; }
.part { margin: 1.25rem 0; padding: 1rem 0 .2rem; border-top: 1px solid var(--line); }
.earlier summary { padding: .3rem 0; }
.earlier summary h3 { display: inline; }
.earlier .part { margin: .4rem 0; padding: .4rem 0 0; }
nav ul { list-style: none; padding: 0; display: flex; flex-wrap: wrap; gap: .2rem 1.2rem; }
nav a { display: inline-block; min-height: 1.9rem; padding: .15rem 0; }
table { width: 100%; margin: .9rem 0; border-collapse: collapse; font-variant-numeric: tabular-nums; }
caption { padding: .2rem 0; text-align: left; }
th, td { padding: .2rem .8rem .2rem 0; border-bottom: 1px solid var(--line); text-align: left; vertical-align: top; font-weight: 400; }
th:last-child, td:last-child { padding-right: 0; }
thead th { color: var(--soft); font-size: .88rem; border-bottom: 1px solid var(--ink); }
thead th { white-space: nowrap; }
tbody th { min-width: 4.4rem; }
table:not(.folds):has(.figures) tbody th { width: 40%; }
.folds tbody th { min-width: 7.5rem; }
.figures { text-align: right; white-space: nowrap; }
@media screen and (min-width: 52rem) {
  .visits table:has(.figures):not(.folds), [aria-labelledby="last-colour"] table:has(.figures):not(.folds) {
    display: inline-table; width: calc(50% - 1.2rem); margin-right: .9rem; vertical-align: top;
  }
}
@media (max-width: 42rem) {
  html { font-size: 100%; }
  h1 { font-size: 1.7rem; }
  dl > div { display: block; padding: .2rem 0; }
  .folds, .folds tbody, .folds tr, .folds th, .folds td, .folds caption { display: block; }
  .folds thead { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); white-space: nowrap; }
  .folds tr { padding: .4rem 0; border-bottom: 1px solid var(--line); }
  .folds th, .folds td { padding: 0; border: 0; text-align: left; }
  .folds tbody th { min-width: 0; font-weight: 600; }
  .folds td:empty { display: none; }
  .folds td::before { content: attr(data-head) ": "; color: var(--soft); }
}
@media print {
  @page { size: A4; margin: 9mm 12mm; }
  :root { --paper: #fff; --ink: #000; --soft: #333; --line: #999; --band: #fff; --mark: #000; --mark-paper: #fff; --link: #000; }
  html { font-size: 8.7pt; }
  body { line-height: 1.25; }
  header, main { max-width: none; padding: 0; }
  nav { display: none; }
  h2, h3, caption { break-after: avoid; }
  .alerts, tr, dd, li { break-inside: avoid; }
  .alerts { padding: 0 .6rem .2rem; }
  .alerts h2 { margin: .3rem 0 .1rem; }
  h1 { font-size: 1.5rem; }
  h2 { margin-top: .8rem; font-size: 1.05rem; }
  main > section:first-child { margin-top: .6rem; }
  p, ul, dl { margin: .25rem 0; }
  dl > div { padding: 0; }
  table { margin: .35rem 0; font-size: .92rem; }
  th, td { padding: .08rem .6rem .08rem 0; }
  .part, main > section:not(.alerts, .visits) { columns: 2; column-gap: 7mm; }
  .part > h3, main > section > h2 { column-span: all; }
  dl > div { grid-template-columns: 5.9rem 1fr; column-gap: .4rem; }
  thead th { white-space: normal; }
  .folds { font-size: .85rem; }
  .folds tbody th { min-width: 4rem; }
  table { break-inside: avoid; }
  .visits, .part + .part { break-before: page; }
  .earlier .part + .part { break-before: auto; }
  .earlier details::details-content { content-visibility: visible; block-size: auto; }
  .clients .part { columns: 1; }
  .clients .part + .part { break-before: auto; }
  .visits > h2 { margin-top: 0; }
  .part { margin: 0; padding-top: .3rem; border-top: 0; }
}
${FIGURE_STYLE}${PREP_STYLE}`;
