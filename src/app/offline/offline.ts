import type { Ui } from '../ui.ts';

/** How often a page that stays open asks for a new version, ms. */
const HOUR = 3_600_000;

/** The page around the program: what of it the new versions need. */
export interface Surroundings {
  readonly container: Pick<ServiceWorkerContainer, 'register' | 'controller' | 'addEventListener'>;
  reload(): void;
}

/**
 * Keeps the program in the browser and says when a new version waits. It never takes one by itself: a
 * version changes only when a person asks, or when no page of the old one is open any more.
 */
export async function keepOffline(ui: Ui, { container, reload }: Surroundings): Promise<void> {
  let wanted = false;
  let controlled = container.controller !== null;
  container.addEventListener('controllerchange', () => {
    if (wanted) reload();
    else if (controlled) ui.setState({ update: { from: 'elsewhere', take: reload } });
    controlled = true;
    ui.setState({ keptOffline: true });
  });

  const registration = await container.register('./worker.js', { updateViaCache: 'none' });
  const look = () => {
    const { waiting, active } = registration;
    if (active) ui.setState({ keptOffline: true });
    if (!waiting || !controlled) return;
    const take = () => {
      wanted = true;
      waiting.postMessage('take over');
    };
    ui.setState({ update: { from: 'waiting', take } });
  };
  const follow = () => registration.installing?.addEventListener('statechange', look);
  look();
  follow();
  registration.addEventListener('updatefound', follow);

  // Without a network there is nothing to be told.
  const ask = () => void registration.update().catch(() => {});
  setInterval(ask, HOUR);
  document.addEventListener('visibilitychange', () => document.visibilityState === 'visible' && ask());
}
