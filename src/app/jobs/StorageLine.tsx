import { Button } from 'react-aria-components';
import { words } from '../../words/index.ts';
import { useApp, useJobs } from '../context.ts';
import { sizeText } from './text.ts';

const says = words.jobs.room;

/** How much room is used, and whether the browser may clear it. */
export function StorageLine() {
  const { jobs } = useApp();
  const room = useJobs((state) => state.room);
  const lasting = useJobs((state) => state.lasting);
  if (!lasting)
    return (
      <p className="jobs-room">
        <strong>{says.nothing}</strong> {says.nothingMore}
      </p>
    );
  if (!room) return <p className="jobs-room" />;
  return (
    <p className="jobs-room">
      {says.used(sizeText(room.usage), sizeText(room.quota))}. {room.lasting ? says.lasting : says.passing}
      {!room.lasting && (
        <>
          {' '}
          <Button className="text-button" onPress={() => void jobs.askToStay()}>
            {says.ask}
          </Button>
        </>
      )}
    </p>
  );
}
