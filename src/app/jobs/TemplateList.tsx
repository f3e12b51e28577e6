import { useEffect, useState } from 'react';
import { Button } from 'react-aria-components';
import { type Portrait, portrayed, type TemplateCard } from '../../files/jobs/cards.ts';
import { words } from '../../words/index.ts';
import { useApp, useBoard, useJobs } from '../context.ts';
import { SketchPicture } from './SketchPicture.tsx';
import { type SuppliedTemplate, supplied, suppliedJob } from './supplied.ts';
import { sizeText, summaryText } from './text.ts';

const says = words.jobs.template;

/** Templates of one's own and those of the program. */
export function TemplateList({ close }: { close: () => void }) {
  const { jobs } = useApp();
  const own = useJobs((state) => state.templates);
  const units = useBoard((state) => state.units);
  const begin = async (template: TemplateCard | SuppliedTemplate) => {
    await jobs.begin(template);
    close();
  };
  return (
    <>
      <section aria-labelledby="own-templates">
        <h3 id="own-templates" className="jobs-part">
          {says.own}
        </h3>
        {own.length === 0 ? (
          <div className="jobs-none">
            <h4>{says.none.title}</h4>
            <p>{says.none.text}</p>
          </div>
        ) : (
          <ul className="job-grid" aria-labelledby="own-templates">
            {own.map((card) => (
              <li key={card.id} className="job-card">
                <SketchPicture sketch={card.sketch} summary={card.summary} />
                <div className="job-head">
                  <h4>{card.title}</h4>
                </div>
                <p className="job-what">
                  {card.withRoute ? summaryText(card.summary, units) : says.withoutRoute}
                  <span>{sizeText(card.size)}</span>
                </p>
                <div className="job-acts">
                  <Button
                    className="button"
                    aria-label={`${says.begin}: ${card.title}`}
                    onPress={() => void begin(card)}
                  >
                    {says.begin}
                  </Button>
                  <Button
                    className="text-button"
                    aria-label={`${words.jobs.view.delete}: ${card.title}`}
                    onPress={() => void jobs.dropTemplate(card)}
                  >
                    {words.jobs.view.delete}
                  </Button>
                </div>
              </li>
            ))}
          </ul>
        )}
      </section>
      <section aria-labelledby="supplied-templates">
        <h3 id="supplied-templates" className="jobs-part">
          {says.builtIn}
        </h3>
        <p className="jobs-lead">{says.invented}</p>
        <ul className="job-grid" aria-labelledby="supplied-templates">
          {supplied.map((id) => (
            <Supplied key={id} id={id} begin={() => void begin(id)} />
          ))}
        </ul>
      </section>
    </>
  );
}

function Supplied({ id, begin }: { id: SuppliedTemplate; begin: () => void }) {
  const units = useBoard((state) => state.units);
  const [portrait, setPortrait] = useState<Portrait | null>(null);
  useEffect(() => {
    let wanted = true;
    void suppliedJob(id).then((job) => wanted && setPortrait(portrayed(job)));
    return () => {
      wanted = false;
    };
  }, [id]);
  const { title, text } = says.supplied[id];
  return (
    <li className="job-card">
      {portrait ? (
        <SketchPicture sketch={portrait.sketch} summary={portrait.summary} />
      ) : (
        <span className="sketch" />
      )}
      <div className="job-head">
        <h4>{title}</h4>
      </div>
      <p className="job-text">{text}</p>
      <p className="job-what">{portrait && summaryText(portrait.summary, units)}</p>
      <div className="job-acts">
        <Button className="button" aria-label={`${says.begin}: ${title}`} onPress={begin}>
          {says.begin}
        </Button>
      </div>
    </li>
  );
}
