/** What the sheet beside the trolley needs besides: room to write by hand, each client on a sheet of her own. */
export const PREP_STYLE = `
.fill-in td, .fill-in th { height: 2.2rem; vertical-align: middle; }
@media (min-width: 42.01rem) { .fill-in td:is(:nth-child(4), :last-child) { white-space: nowrap; } }
@media (max-width: 42rem) { .fill-in td, .fill-in th { height: auto; min-height: 2.2rem; } }
main > section > h1 { margin-top: 2.5rem; }
.worked summary h2 { display: inline; border-bottom: 0; font-size: 1rem; }
.worked summary { padding: .3rem 0; }
@media print {
  .worked { display: none; }
  main > section:not(.alerts, .visits):has(> h1) { break-before: page; columns: auto; margin-top: 0; }
  main > section > h1 { margin-top: 0; }
  main > section.fill-in:not(.alerts, .visits) { columns: auto; }
  .fill-in td, .fill-in tbody th { height: 5.5mm; }
  .fill-in thead th { height: auto; }
  html:has(.asked) { font-size: 8.4pt; }
  main:has(.asked) { line-height: 1.16; }
  main:has(.asked) h2 { margin: .3rem 0 .15rem; padding-bottom: .1rem; border-bottom-width: 1px; }
  main:has(.asked) :is(p, ul, dl) { margin: .15rem 0; }
  main:has(.asked) table { margin: .2rem 0; }
  main:has(.asked) .placement svg { max-height: 25mm; }
  main:has(.asked) .figure { margin: .2rem 0; }
  main:has(.asked) > section.caution:not(.alerts, .visits) { columns: auto; }
  main:has(.asked) .caution :is(p, ul) { font-size: .76rem; line-height: 1.1; }
  main:has(.asked) .caution ul { padding: 0; }
  main:has(.asked) .caution :is(ul, li, p) { display: inline; }
}
`;
