import fc from 'fast-check';
import { expect, test } from 'vitest';
import { assessLoading } from '../../../shared-calc/loading/assess.ts';
import { twoFriends, twoSeater } from './example.ts';

test('margins do not depend on the units: with every length and mass in others, they are the same in those', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.3, max: 4, noNaN: true }),
      fc.double({ min: 0.5, max: 3, noNaN: true }),
      (lengths, masses) => {
        const scaled = (massKg: number | null) => (massKg === null ? null : massKg * masses);
        // Volumes grow with the masses, so that the density stays that of a fuel; the engine burns as much more.
        const aeroplane = {
          ...twoSeater,
          empty: {
            ...twoSeater.empty,
            massKg: twoSeater.empty.massKg * masses,
            armM: twoSeater.empty.armM * lengths,
          },
          mac: null,
          stations: twoSeater.stations.map((station) =>
            station.arm.kind === 'fixed'
              ? {
                  ...station,
                  mostKg: scaled(station.mostKg),
                  arm: { kind: 'fixed' as const, armM: station.arm.armM * lengths },
                }
              : station,
          ),
          tanks: twoSeater.tanks.map((tank) =>
            tank.arm.kind === 'fixed'
              ? {
                  ...tank,
                  capacityL: tank.capacityL * masses,
                  arm: { kind: 'fixed' as const, armM: tank.arm.armM * lengths },
                }
              : tank,
          ),
          envelopes: twoSeater.envelopes.map((envelope) => ({
            ...envelope,
            vertices: envelope.vertices.map(({ across, massKg }) => ({
              across: across * lengths,
              massKg: massKg * masses,
            })),
          })),
          maxMasses: {
            rampKg: scaled(twoSeater.maxMasses.rampKg),
            takeOffKg: scaled(twoSeater.maxMasses.takeOffKg),
            landingKg: scaled(twoSeater.maxMasses.landingKg),
            zeroFuelKg: scaled(twoSeater.maxMasses.zeroFuelKg),
          },
        };
        const loading = {
          ...twoFriends,
          loads: twoFriends.loads.map((load) => ({ ...load, massKg: load.massKg * masses })),
          fuel: twoFriends.fuel.map(({ tankId, lowL, bestL, highL }) => ({
            tankId,
            lowL: lowL * masses,
            bestL: bestL * masses,
            highL: highL * masses,
          })),
          flight: {
            ...twoFriends.flight,
            taxiL: twoFriends.flight.taxiL * masses,
            cruiseLPerH: twoFriends.flight.cruiseLPerH * masses,
          },
        };
        const here = assessLoading(twoSeater, twoFriends);
        const there = assessLoading(aeroplane, loading);
        expect(there.margins).toHaveLength(here.margins.length);
        there.margins.forEach(({ limit, margin }, i) => {
          const unit = limit.kind === 'forward' || limit.kind === 'aft' ? lengths : masses;
          // Twelve of the sixteen digits: margins are differences of numbers a hundred times their size.
          expect(margin / unit).toBeCloseTo(here.margins[i]?.margin ?? NaN, 9);
        });
        expect(there.inside).toBe(here.inside);
      },
    ),
    { numRuns: 100, seed: 6 },
  );
});
