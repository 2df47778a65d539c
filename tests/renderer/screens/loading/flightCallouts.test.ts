import { expect, test } from 'vitest';
import { aircraft, weighings } from '../../../../fixtures/demo/aircraft.ts';
import { loadings } from '../../../../fixtures/demo/loadings.ts';
import { people } from '../../../../fixtures/demo/people.ts';
import { flightCallouts } from '../../../../renderer/screens/loading/flightCallouts.ts';
import { assessLoading } from '../../../../shared-calc/loading/assess.ts';
import { caseOf } from '../../../../shared-calc/loading/case-of.ts';
import { shown } from '../../../../shared-calc/units/shown.ts';
import { UNIT_PRESETS } from '../../../../shared-calc/units/preferences.ts';
import { weighingOf } from '../../../shared-calc/wording/example-weighing.ts';

// 328.8 kg at (69.9 × 0.72 + 258.9 × 2.16) / 328.8 m; 68 and 86 + 3 kg at 2.055 m, 10.8 kg at 2.55 m, 8.5 kg at 2.95 m. Each
// tank's arm is straight from 2.172 m at 12 L to 2.016 m at 36 L: with v litres in each, 0.72 kg/L, the CG is
// (Q + 1.44 v arm(v)) / (505.1 + 1.44 v). Stepped through outside the program it passes 1.957 m at v = 33.260 L and at
// 11.816 L, whatever was there at the start: 66.52 L are left. The low figures, 94.8 L, come there first:
// 94.8 − 1.5 − 3 − 66.52 = 23.78 L at 17 L/h after 8 min of climb are 91.9 min.
test('the aft limit is met with so much left as meets it, by the figures of fuel that come there first', () => {
  const [, weighing] = weighings;
  const loading = loadings.find(({ id }) => id === 'to-the-lakes');
  if (weighing === undefined || loading === undefined) throw new Error('the demo has changed');
  const { emptyMassKg, emptyArmM, massSdKg, armSdM } = weighing;
  const prepared = caseOf({
    aircraft,
    weighing: { ...weighingOf(aircraft.id), emptyMassKg, emptyArmM, massSdKg, armSdM },
    loading,
    people,
  });
  if (!prepared.ready) throw new Error(prepared.missing.join(' '));
  const units = UNIT_PRESETS.metric;
  const said = flightCallouts(assessLoading(prepared.aeroplane, prepared.loading), {
    shown: (value, quantity, question) => shown(value, quantity, units[quantity], question),
  }).map(({ lines }) => lines.join(', ').replace(/[\u00a0\u2009]/g, ' '));
  expect(said).toContain('aft limit met, 1 h 31 min, 66.5 L left');
  expect(said).toContain('inside again, 4 h 8 min');
});
