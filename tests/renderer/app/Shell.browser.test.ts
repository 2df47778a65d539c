import axe from 'axe-core';
import { userEvent } from 'vitest/browser';
import { beforeEach, expect, test } from 'vitest';
import { render } from 'vitest-browser-svelte';
import App from '../../../renderer/app/App.svelte';
import { showAppearance } from '../../../renderer/app/appearance.ts';
import { makeClient } from '../../../renderer/app/client.ts';
import { partsBridge, type StandIn } from '../../../renderer/ui/parts/partsBridge.ts';
import '../../../renderer/ui/tokens.css';
import '../../../renderer/ui/base.css';
import '../../../renderer/plot/plot.css';

const status = {
  libraryPath: '/home/pilot/own.tarewing',
  isDemo: false,
  problem: null,
};

beforeEach(() => {
  showAppearance('light', 100);
});

async function shell(standIns: Record<string, StandIn> = {}) {
  const bridge = partsBridge({
    'library.backups': () => ({ folder: '/home/pilot/backups', backups: [] }),
    ...standIns,
  });
  const screen = await render(App, {
    client: makeClient(bridge),
    first: { status, settings: {}, screen: 'settings' },
  });
  return { screen, bridge };
}

test('undo says what it will undo and where, runs once, and offers to do it again', async () => {
  const next = {
    undo: { named: 'arm of the rear tank', screen: 'settings', atEpochS: 0 } as object | null,
    redo: null,
  };
  const { screen, bridge } = await shell({
    'history.next': () => ({ ...next }),
    'history.undo': () => {
      next.undo = null;
      return { named: 'arm of the rear tank', screen: 'settings' };
    },
  });
  await expect.element(screen.getByText('arm of the rear tank, in Settings')).toBeVisible();
  // A press somewhere gives the page the keyboard.
  await screen.getByRole('heading', { name: 'Settings' }).click();
  await userEvent.keyboard('{Control>}z{/Control}');
  await expect.element(screen.getByText(/Undone: arm of the rear tank/)).toBeVisible();
  expect(bridge.asked.filter(({ name }) => name === 'history.undo')).toHaveLength(1);
  bridge.emit({ type: 'changed', areas: ['history'] });
  await expect.element(screen.getByRole('button', { name: 'Undo', exact: true })).toBeDisabled();
});

test('a change elsewhere is asked for again, and only what it touched', async () => {
  const { screen, bridge } = await shell();
  await expect.element(screen.getByRole('heading', { name: 'Settings' })).toBeVisible();
  const count = (name: string) => bridge.asked.filter((each) => each.name === name).length;
  await expect.poll(() => count('settings.get')).toBeGreaterThan(0);
  const before = { settings: count('settings.get'), aircraft: count('aircraft.list') };
  bridge.emit({ type: 'changed', areas: ['settings'] });
  await expect.poll(() => count('settings.get')).toBe(before.settings + 1);
  expect(count('aircraft.list')).toBe(before.aircraft);
});

test('a unit is chosen per quantity, and the set of US units at once', async () => {
  const { screen, bridge } = await shell();
  await screen.getByRole('radio', { name: 'US', exact: true }).click();
  await expect
    .element(screen.getByRole('radio', { name: 'lb', exact: true }))
    .toHaveAttribute('aria-checked', 'true');
  const puts = bridge.asked.filter(({ name }) => name === 'settings.put');
  expect(puts).toHaveLength(1);
});

test('the question mark lists the keys, and Escape puts the list away', async () => {
  const { screen } = await shell();
  await userEvent.keyboard('?');
  const list = screen.getByRole('dialog', { name: 'Keys' });
  await expect.element(list.getByText('Undo the last change')).toBeVisible();
  await userEvent.keyboard('{Escape}');
  await expect.element(list).not.toBeInTheDocument();
});

test('a refused change is a notice with the library’s own sentence', async () => {
  const { screen } = await shell({
    'library.backUp': () => {
      throw new Error('The disk is full. Nothing was changed. Make room and do it again.');
    },
  });
  await screen.getByRole('button', { name: 'Back up now' }).click();
  await expect.element(screen.getByText(/The disk is full/)).toBeVisible();
});

test('a library that cannot be opened says why and offers others', async () => {
  const problem = {
    code: 'library-newer' as const,
    sentence: 'This library has format 90; this version reads up to 40. It was left as it is.',
    fields: [],
  };
  const bridge = partsBridge({
    'host.listFolder': () => ({
      path: '/home/pilot',
      parentPath: '/home',
      folders: [],
      libraries: [
        { name: 'other.tarewing', path: '/home/pilot/other.tarewing', sizeBytes: 4096, changedEpochS: 0 },
      ],
    }),
  });
  const screen = await render(App, {
    client: makeClient(bridge),
    first: { status: { ...status, problem }, settings: {}, screen: 'settings' },
  });
  await expect.element(screen.getByText(/This library has format 90/)).toBeVisible();
  await expect.element(screen.getByRole('button', { name: 'other.tarewing' })).toBeVisible();
});

// 24 CSS pixels: WCAG 2.2, success criterion 2.5.8. Words in running text are excepted there.
test('no target of the window is smaller than 24 pixels', async () => {
  const { screen } = await shell();
  await expect.element(screen.getByRole('heading', { name: 'Settings' })).toBeVisible();
  const small = [...document.querySelectorAll('button, a, select, input')]
    .map((each) => ({ name: each.textContent, box: each.getBoundingClientRect() }))
    .filter(({ box }) => box.width > 0 && (box.height < 23.5 || box.width < 23.5));
  expect(small.map(({ name, box }) => `${name} ${String(box.width)} x ${String(box.height)}`)).toEqual([]);
});

test.each(['light', 'dark'] as const)('the window passes the accessibility rules in %s', async (theme) => {
  const { screen } = await shell();
  showAppearance(theme, 100);
  await expect.element(screen.getByRole('heading', { name: 'Settings' })).toBeVisible();
  const { violations } = await axe.run(document.body, {
    runOnly: ['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa'],
  });
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.html).join(' | ')}`)).toEqual(
    [],
  );
});

test('at twice the text size the index becomes lines of words and nothing is wider than the window', async () => {
  const { screen } = await shell();
  await expect.element(screen.getByRole('heading', { name: 'Settings' })).toBeVisible();
  // Set after the layout on purpose: a container asked in rem has to answer anew.
  await screen.getByRole('radio', { name: '200 %' }).click();
  const index = screen.getByRole('navigation', { name: 'Screens' }).element();
  await expect.poll(() => getComputedStyle(index).flexDirection).toBe('row');
  expect(document.documentElement.scrollWidth).toBeLessThanOrEqual(document.documentElement.clientWidth);
  await screen.getByRole('radio', { name: '100 %' }).click();
});
