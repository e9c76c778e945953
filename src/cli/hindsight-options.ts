/** What `bowlbook hindsight` may be asked, whatever its subject. */
export type HindsightOptions = { readonly others?: true; readonly json?: true };
