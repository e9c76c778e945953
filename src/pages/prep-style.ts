/** What the sheet beside the trolley needs besides: room to write by hand, each client on a sheet of her own. */
export const PREP_STYLE = `
.fill-in td, .fill-in th { height: 2.2rem; vertical-align: middle; }
main > section > h1 { margin-top: 2.5rem; }
@media print {
  main > section:not(.alerts, .visits):has(> h1) { break-before: page; columns: auto; margin-top: 0; }
  main > section > h1 { margin-top: 0; }
  main > section.fill-in:not(.alerts, .visits) { columns: auto; }
  .fill-in td, .fill-in tbody th { height: 5.5mm; }
  .fill-in thead th { height: auto; }
  main:has(.fill-in) .placement svg { max-height: 28mm; }
  main:has(.fill-in) h2 { margin-top: .5rem; }
  main:has(.fill-in) { line-height: 1.18; }
  main:has(.fill-in) .caution :is(p, ul) { font-size: .82rem; }
}
`;
