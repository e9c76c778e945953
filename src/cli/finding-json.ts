import type { Finding } from '../text/finding.ts';
import { type FilePlace, fromOf, toOf } from '../text/span.ts';

/** A place as JSON has it: line and columns counted from 1, in UTF-16 units; `endColumn` is one past the last. */
const placeJson = ({ file, line, at }: FilePlace): object => ({
  path: file,
  line: line + 1,
  column: fromOf(at) + 1,
  endColumn: toOf(at) + 1,
});

/** A finding as plain JSON; what it does not have is left out. */
export const findingJson = (finding: Finding): object => {
  const { key, place, severity, rule, message, expected, figures, todo, caution, also, mend, client, reason } = finding;
  return {
    ...placeJson(place),
    severity,
    rule,
    key,
    message,
    ...(expected !== undefined && { expected }),
    ...(todo !== undefined && { todo }),
    ...(caution !== undefined && { caution }),
    ...(figures !== undefined && { figures }),
    ...(also !== undefined &&
      also.length > 0 && { also: also.map((one) => ({ ...placeJson(one.place), says: one.says })) }),
    ...(mend !== undefined && {
      mend: {
        title: mend.title,
        sure: mend.sure,
        edits: mend.edits.map((edit) => ({ ...placeJson(edit.place), put: edit.put })),
      },
    }),
    ...(client !== undefined && { client }),
    ...(reason !== undefined && { reason }),
  };
};
