/** What tabs tell one another. */
export type Message =
  /** What the shelf has of a job is newer. */
  | { readonly kind: 'kept'; readonly job: string }
  /** The list of jobs, versions or templates has changed. */
  | { readonly kind: 'listed' }
  /** A tab asks for a job that another one has. */
  | { readonly kind: 'ask'; readonly job: string; readonly tab: string }
  /** It is written and given up to the tab that asked. */
  | { readonly kind: 'yielded'; readonly job: string; readonly to: string };

/** A way to the other tabs of this browser; a tab does not hear itself. */
export interface Channel {
  post(message: Message): void;
  listen(hear: (message: Message) => void): void;
}

/** The browser's own channel; silent where there is none. */
export function browserChannel(): Channel {
  if (typeof BroadcastChannel === 'undefined') return { post: () => {}, listen: () => {} };
  const channel = new BroadcastChannel('gentlebend');
  return {
    post: (message) => channel.postMessage(message),
    listen: (hear) => channel.addEventListener('message', ({ data }) => hear(data as Message)),
  };
}
