import { useEffect } from 'react';
import { Button } from 'react-aria-components';
import { words } from '../../words/index.ts';
import { useApp, useUi } from '../context.ts';
import './offline.css';

/** Says that a new version waits, and takes it when asked; the work is kept before the page loads again. */
export function UpdateBar() {
  const app = useApp();
  const update = useUi((state) => state.update);
  const told = words.offline.update;
  const text = update?.from === 'elsewhere' ? told.elsewhere : told.ready;
  const { say } = app;
  useEffect(() => {
    if (update) say(text);
  }, [update, text, say]);
  if (!update) return null;
  const take = () => {
    app.files.leave();
    update.take();
  };
  return (
    <section className="update-bar" aria-label={told.region}>
      <p>
        <strong>{text}</strong> {told.safe}
      </p>
      <Button className="button primary" onPress={take}>
        {told.reload}
      </Button>
      <Button className="button" onPress={() => app.ui.setState({ update: null })}>
        {told.later}
      </Button>
    </section>
  );
}
