import axe from 'axe-core';
import { expect, test } from 'vitest';
import { render } from 'vitest-browser-svelte';
import { showAppearance } from '../../../renderer/app/appearance.ts';
import { makeClient } from '../../../renderer/app/client.ts';
import Parts from '../../../renderer/ui/parts/Parts.svelte';
import { partsBridge } from '../../../renderer/ui/parts/partsBridge.ts';
import '../../../renderer/ui/tokens.css';
import '../../../renderer/ui/base.css';
import '../../../renderer/plot/plot.css';

test.each(['light', 'dark'] as const)('every part passes the accessibility rules in %s', async (theme) => {
  showAppearance(theme, 100);
  const screen = await render(Parts, { client: makeClient(partsBridge()) });
  await expect.element(screen.getByRole('slider', { name: 'Reading' })).toBeVisible();
  const { violations } = await axe.run(document.body, {
    runOnly: ['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa'],
  });
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.html).join(' | ')}`)).toEqual(
    [],
  );
});
