/** A request that cannot be met: what and where in the message, and what to type instead. It ends with exit code 2. */
export type Refusal = Error & { readonly todo: string | undefined };

/** Makes a refusal, to be thrown: one sentence on what is wrong, one on what to do. */
export const refusal = (what: string, todo?: string): Refusal =>
  Object.assign(new Error(what), { name: 'Refusal', todo });

/** Whether something thrown is a refusal, and not a fault of the program. */
export const isRefusal = (thrown: unknown): thrown is Refusal =>
  thrown instanceof Error && thrown.name === 'Refusal' && 'todo' in thrown;

/** The refusal of a file that something else changed while it was read: another try may do. `what` says what is not done. */
export const changedMeanwhile = (path: string, what: string): Refusal & { readonly changed: string } =>
  Object.assign(refusal(`\`${path}\` has changed since it was read, so ${what}.`, 'Run the command again.'), {
    changed: path,
  });

/** The file that changed while it was read, where that is why something was refused. */
export const changedIn = (thrown: unknown): string | undefined =>
  isRefusal(thrown) && 'changed' in thrown && typeof thrown.changed === 'string' ? thrown.changed : undefined;

/** Words as they are offered: `` `a` ``, `` `a` or `b` ``. */
export const offered = (words: readonly string[]): string => {
  const quoted = words.map((word) => `\`${word}\``);
  return quoted.length < 2 ? quoted.join('') : `${quoted.slice(0, -1).join(', ')} or ${quoted.at(-1)}`;
};
