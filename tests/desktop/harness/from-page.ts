import type { Page } from 'playwright-core';
import type { Answer } from '../../../main/requests/run.ts';

/** Ask a request from inside the page, over whichever bridge it has: what a screen does, without the screen. */
export async function fromPage(page: Page, name: string, input: unknown): Promise<Answer> {
  await page.waitForFunction(
    () => window.tarewing !== undefined || sessionStorage.getItem('tarewing-token') !== null,
  );
  return page.evaluate(
    async ([asked, value]) => {
      const call = crypto.randomUUID();
      if (window.tarewing !== undefined) return window.tarewing.request(asked, value, call);
      const response = await fetch('/request', {
        method: 'POST',
        headers: {
          'Content-Type': 'application/json',
          'X-Tarewing-Token': sessionStorage.getItem('tarewing-token') ?? '',
        },
        body: JSON.stringify({ name: asked, input: value, call }),
      });
      return (await response.json()) as Answer;
    },
    [name, input] as const,
  );
}
