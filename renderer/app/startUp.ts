import type { Screen } from '../../main/requests/define.ts';
import type { OutputOf } from '../../main/requests/table.ts';
import { showAppearance } from './appearance.ts';
import type { Client } from './client.ts';
import { placeFrom } from './placeFrom.ts';
import { screens } from './screens.ts';
import { contrastOf, textPercentOf, themeOf } from './settings.svelte.ts';
import { sheets } from './sheets.svelte.ts';

/** How things stand before the window is drawn. */
export interface Start {
  status: OutputOf<'host.status'>;
  settings: Record<string, unknown>;
  /** Where the person begins. */
  screen: Screen;
}

/**
 * Ask which library is open and how the person wants to see it, set theme and text scale before any layout, and read the
 * sheet that is shown first.
 */
export async function startUp(client: Client): Promise<Start> {
  const status = await client.ask('host.status', {});
  const settings = status.problem === null ? await client.ask('settings.get', {}) : {};
  showAppearance(
    themeOf(settings['theme']),
    textPercentOf(settings['textPercent']),
    contrastOf(settings['contrast']),
  );
  const screen = placeFrom(settings['place'], location.hash, screens);
  if (status.problem === null) await sheets.fetch(screen);
  return { status, settings, screen };
}
