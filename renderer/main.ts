import './ui/tokens.css';
import './ui/base.css';
import './plot/plot.css';
import './ui/print.css';
import { mount } from 'svelte';
import App from './app/App.svelte';
import { makeClient, sentenceOf } from './app/client.ts';
import { findBridge } from './app/find-bridge.ts';
import { startUp } from './app/startUp.ts';

const target = document.getElementById('window');
if (target === null) throw new Error('The page has no place for the window.');
try {
  const client = makeClient(await findBridge());
  mount(App, { target, props: { client, first: await startUp(client) } });
} catch (error) {
  target.textContent = `The window could not start: ${sentenceOf(error)} What was saved is safe.`;
}
