import { ROGERS_1995, theoreticalBankOfLeastLossDeg } from '../../shared-calc/turnback/least-loss-bank.ts';
import {
  bankForRateDeg,
  heightLostM,
  loadFactor,
  radiusForRateM,
  stallSpeedUnderLoadMs,
  turnRadiusM,
  turnRateRadS,
} from '../../shared-calc/turnback/turn.ts';
import { fromSi, toSi } from '../../shared-calc/units/convert.ts';
import { alike, inputOf, numbered, publishedChecks } from './cases.ts';
import type { PublishedCase } from './cases.ts';

const speedMs = (published: PublishedCase) => toSi(inputOf(published, 'tas', 'kt'), 'kt');
const rateRadS = (published: PublishedCase) => toSi(inputOf(published, 'rate', 'deg/s'), 'deg');
const radiusFt = (published: PublishedCase) =>
  fromSi(turnRadiusM(speedMs(published), inputOf(published, 'bank', 'deg')), 'ft');

publishedChecks('turn-back', {
  'TURN-001': (published) => {
    const radius = fromSi(radiusForRateM(speedMs(published), rateRadS(published)), 'ft');
    return { radius, lateral_offset_after_180: 2 * radius };
  },
  'TURN-002': (published) => {
    const changeRad = toSi(inputOf(published, 'heading_change', 'deg'), 'deg');
    const reactionS = inputOf(published, 'reaction_time', 's');
    const sinkMs = toSi(inputOf(published, 'sink_rate', 'ft/min'), 'ft/min');
    const lost = fromSi(heightLostM(sinkMs, reactionS, changeRad, rateRadS(published)), 'ft');
    return {
      time_in_turn: heightLostM(1, 0, changeRad, rateRadS(published)),
      height_lost: lost,
      height_relative_to_runway: inputOf(published, 'height_at_failure', 'ft') - lost,
    };
  },
  'TURN-003': (published) => ({ radius: radiusFt(published) }),
  'TURN-004': (published) => ({
    rate: fromSi(turnRateRadS(speedMs(published), inputOf(published, 'bank', 'deg')), 'deg'),
  }),
  'TURN-005': (published) => ({
    radius: radiusFt(published),
    ratio_to_120_kt: radiusFt(published) / fromSi(turnRadiusM(toSi(120, 'kt'), inputOf(published, 'bank', 'deg')), 'ft'),
  }),
  'TURN-006': (published) => ({
    radius: turnRadiusM(speedMs(published), inputOf(published, 'bank', 'deg'), inputOf(published, 'g', 'm/s2')),
  }),
  // The speed at which the bank of rate one is 45 degrees: its tangent is 1.
  'TURN-007': (published) => {
    const speedKt = 100;
    const bankDeg = bankForRateDeg(toSi(speedKt, 'kt'), rateRadS(published));
    return { constant: speedKt / Math.tan(toSi(bankDeg, 'deg')) };
  },
  ...alike(numbered('TURN', 8, 12), (published) => {
    const n = loadFactor(inputOf(published, 'bank', 'deg'));
    return { load_factor: n, stall_speed_ratio: stallSpeedUnderLoadMs(20, n) / 20 };
  }),
  'TURN-013': (published) => ({
    stall_speed: fromSi(
      stallSpeedUnderLoadMs(toSi(inputOf(published, 'stall_speed_1g', 'kt'), 'kt'), inputOf(published, 'load_factor', 'g')),
      'kt',
    ),
  }),
  'TURN-014': () => ({
    // Found by search; the case allows nothing beyond the printed degree.
    bank: Math.round(theoreticalBankOfLeastLossDeg('fixedMarginOverStall') * 1000) / 1000,
    speed_factor: ROGERS_1995.speedRatio,
    heading_change_min: ROGERS_1995.leastHeadingChangeDeg,
    heading_change_max: ROGERS_1995.mostHeadingChangeDeg,
  }),
});
