import { expect, test } from 'vitest';
import { isDenied, isLongPast } from '../../src/trade/denial.ts';

/** The word between stars, and whether it is denied. */
const denied = (marked: string): boolean => {
  const from = marked.indexOf('*');
  const to = marked.indexOf('*', from + 1) - 1;
  return isDenied(marked.replaceAll('*', ''), from, to);
};

test.each([
  'no *asthma*, asked twice',
  '*asthma* no',
  '*asthma*: none',
  '*Asthma*? no',
  'never any *rash*',
  'no redness, *swelling* or itching',
  'no redness, swelling or *itching*',
  'no itching, *burning*, swelling',
  'no itching and *redness*',
  'the scalp did not *burn*',
  'the scalp didn’t *burn* at all',
  'no sign of any *redness* on the scalp',
  'could not see any *redness*',
  'without *blisters*',
  'reported no *burning*',
  '*swelling* not seen',
  'kein *Brennen*',
  'keinerlei *Rötung*',
  'es *brannte* nicht',
  'hat nicht *gebrannt*',
  'ohne *Juckreiz*',
  'pas de *rougeur*',
  'ça ne *brûle* pas',
  'sans *démangeaison*',
  'aucune *brûlure*',
  'sem *coceira*',
  'não *ardeu*',
  'nenhuma *queimadura* no couro cabeludo',
  'sin *ampollas*',
  'no le *picó*',
  'ningún *escozor*',
  'neither *redness* nor itching',
])('%s is denied', (text) => expect(denied(text)).toBe(true));

test.each([
  'no redness but *blisters* behind the ears',
  'no redness, *blisters* behind the ears',
  'no pain, *swollen*',
  'did not hold and *broke*',
  'not only red, also *swollen*',
  'not just *red*',
  'nothing but *blisters*',
  'no longer *itches*',
  'does not *itch* any more',
  '*itching* gone, no marks',
  'not better, *itching* all night',
  'would not stop *itching*',
  'could not sleep for the *itching*',
  'no doubt it *burned*',
  'did not say it *burned* until the rinse',
  'never seen such *blisters*',
  '*blisters*, no pain',
  '*juckt* nicht mehr',
  'nicht besser, *juckt*',
  'ne *brûle* plus',
  'já não *coça*',
  'não *coça* mais',
  'no dia seguinte *bolhas* no couro cabeludo',
  'ya no *pica*',
  'sin dolor pero con *ampollas*',
])('%s is not denied', (text) => expect(denied(text)).toBe(false));

test('what ended long ago, and what did not', () => {
  expect(['asthma as a child, none for thirty years', 'Asthma als Kind', 'asma de niña'].map(isLongPast)).toEqual([
    true,
    true,
    true,
  ]);
  expect(['asthma since childhood, carries an inhaler', 'asthma', 'still some'].map(isLongPast)).toEqual([
    false,
    false,
    false,
  ]);
});
