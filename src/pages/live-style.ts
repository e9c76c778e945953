/** What the live page needs beside the style sheet of every page: minutes to be read from across the room. */
export const LIVE_STYLE = `
.runs { list-style: none; padding: 0; }
.run { margin: .8rem 0; padding: .6rem 1rem; border: 2px solid var(--line); border-left-width: .7rem; }
.run h3 { margin: 0; }
.run .clock { margin: .1rem 0; }
.run .minutes { font-size: 2.6rem; line-height: 1.1; font-weight: 650; font-variant-numeric: tabular-nums; }
.run[data-state="look"] { border-color: var(--link); border-style: dashed; border-left-style: solid; }
.run.due .look { font-size: 1.25rem; font-weight: 650; }
.run[data-state="past"] { border-color: var(--mark); background: var(--mark-paper); }
.past, #away { color: var(--mark); }
.stops { margin: .5rem 0; padding: .3rem .8rem; border: 2px solid var(--mark); background: var(--mark-paper); color: var(--mark); list-style: none; }
#away { padding: .3rem .8rem; border: 2px solid var(--mark); background: var(--mark-paper); }
[hidden] { display: none; }
#noted:not(:empty) {
  position: fixed; z-index: 1; pointer-events: none; inset: auto 1rem 1rem; margin: 0; padding: .6rem .8rem; border-radius: .3rem;
  background: var(--ink); color: var(--paper); font-weight: 600;
}
#awake { position: fixed; top: 0; right: 0; width: 3rem; height: 3rem; opacity: .01; pointer-events: none; }
nav a { min-height: 2.75rem; padding: .5rem 0; }
button {
  min-height: 4rem; padding: .6rem 1.1rem; border: 2px solid var(--ink); border-radius: .3rem;
  background: var(--band); color: var(--ink); font: inherit; font-weight: 600; cursor: pointer;
}
button:disabled { opacity: 1; border-style: dashed; cursor: progress; }
.stamps { display: grid; grid-template-columns: repeat(auto-fill, minmax(min(100%, 13rem), 1fr)); gap: .7rem; margin: .8rem 0; }
`;
