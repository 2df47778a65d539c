import type { Screen } from '../../main/requests/define.ts';

/**
 * Where to begin: the screen in the address, else the one that was left, else the first that there is.
 * @param kept what was read back from the library, not to be trusted
 * @param hash the address's part behind '#', with it
 */
export function placeFrom(kept: unknown, hash: string, screens: readonly { id: Screen }[]): Screen {
  const known = (name: unknown): Screen | undefined =>
    name === 'settings' ? 'settings' : screens.find((screen) => screen.id === name)?.id;
  return known(hash.slice(1)) ?? known(kept) ?? screens[0]?.id ?? 'settings';
}
