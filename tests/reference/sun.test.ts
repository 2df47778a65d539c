import { sunDay } from '../../shared-calc/sun/sun-day.ts';
import type { SunDay } from '../../shared-calc/sun/sun-day.ts';
import { alike, inputOf, numbered, publishedChecks } from './cases.ts';
import type { PublishedCase } from './cases.ts';

/** The tables give no zone: noon of the place's own mean time names the date. */
function dayOf(published: PublishedCase): SunDay {
  const longitudeDeg = inputOf(published, 'longitude', 'deg east');
  const noonEpochS = Date.parse(`${String(published.inputs['local_date'])}T12:00Z`) / 1000;
  return sunDay(noonEpochS - longitudeDeg * 240, inputOf(published, 'latitude', 'deg north'), longitudeDeg);
}

const STATE_WORDS = {
  crosses: 'sun rises and sets',
  aboveAllDay: 'sun above horizon all day',
  belowAllDay: 'sun below horizon all day',
} as const;

publishedChecks('sun', {
  ...alike(numbered('SUN', 1, 13), (published) => {
    const { sun } = dayOf(published);
    return { sunrise: sun.upEpochS, sunset: sun.downEpochS };
  }),
  ...alike(numbered('SUN', 14, 15), (published) => {
    const { sun, civilTwilight } = dayOf(published);
    return {
      civil_dawn: civilTwilight.upEpochS,
      sunrise: sun.upEpochS,
      sunset: sun.downEpochS,
      civil_dusk: civilTwilight.downEpochS,
    };
  }),
  ...alike(numbered('SUN', 16, 17), (published) => {
    const { sun } = dayOf(published);
    return { sunrise: sun.upEpochS, sunset: sun.downEpochS, state: STATE_WORDS[sun.state] };
  }),
});
