import { z } from 'zod';
import { findAirports, type ListedAirport } from '../airports/airport-list.ts';
import { read } from './define.ts';

/** So many are offered at once. */
const mostFound = 12;

const listedEnd = z.strictObject({
  ident: z.string(),
  trueHeadingDeg: z.number().nullable(),
  displacedThresholdM: z.number().nullable(),
});

/** An airport with the figures of the bundled list; null is what the list does not know. */
export const listedAirport = z.strictObject({
  id: z.int(),
  identifier: z.string().nullable(),
  name: z.string(),
  municipality: z.string(),
  state: z.string(),
  latitudeDeg: z.number(),
  longitudeDeg: z.number(),
  elevationM: z.number().nullable(),
  isOnWater: z.boolean(),
  runways: z
    .array(
      z.strictObject({
        id: z.int(),
        lengthM: z.number(),
        widthM: z.number().nullable(),
        surface: z.string(),
        ends: z.tuple([listedEnd, listedEnd]),
        /** 'ends': computed from the places of the two ends. */
        headingFrom: z.enum(['list', 'ends']).nullable(),
      }),
    )
    .max(40),
}) satisfies z.ZodType<ListedAirport>;

export const airportRequests = {
  'airports.find': read({
    about:
      'Search the bundled list of airports of the United States (OurAirports) by identifier, name or town: place, elevation and runways to start a field from.',
    where: 'reader',
    input: z.strictObject({ text: z.string().max(60) }),
    output: z.array(listedAirport),
    handle: (_context, { text }) => findAirports(text, mostFound),
  }),
};
