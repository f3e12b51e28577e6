import { useEffect, useState } from 'react';
import {
  Button,
  Heading,
  Input,
  Label,
  SearchField,
  Tab,
  TabList,
  TabPanel,
  Tabs,
} from 'react-aria-components';
import { words } from '../../words/index.ts';
import { useApp, useJobs, useUi } from '../context.ts';
import { FullView } from '../FullView.tsx';
import { Icon } from '../icons.tsx';
import { newJob } from '../start.ts';
import { JobList } from './JobList.tsx';
import { StorageLine } from './StorageLine.tsx';
import { TemplateList } from './TemplateList.tsx';
import './jobs.css';

const says = words.jobs.view;

/** The jobs and templates of this browser over the whole window. */
export default function JobsView() {
  const { ui } = useApp();
  const open = useUi((state) => state.jobs !== null);
  const close = () => ui.setState({ jobs: null });
  return (
    <FullView name="jobs" label={says.title} isOpen={open} onClose={close}>
      <Page close={close} />
    </FullView>
  );
}

function Page({ close }: { close: () => void }) {
  const { ui, jobs, files } = useApp();
  const tab = useUi((state) => state.jobs) ?? 'jobs';
  const cards = useJobs((state) => state.cards);
  const [search, setSearch] = useState('');
  useEffect(() => void jobs.load(), [jobs]);
  const live = cards?.filter(({ deletedAt }) => deletedAt === null) ?? [];
  const deleted = cards?.filter(({ deletedAt }) => deletedAt !== null) ?? [];
  const begin = async () => {
    await files.replace(newJob);
    close();
  };
  return (
    <Tabs
      className="jobs-page"
      selectedKey={tab}
      onSelectionChange={(key) => ui.setState({ jobs: key as 'jobs' | 'templates' | 'deleted' })}
    >
      <header className="jobs-bar">
        <Heading slot="title">{says.title}</Heading>
        <TabList className="jobs-tabs" aria-label={says.parts}>
          <Tab id="jobs">{says.jobs}</Tab>
          <Tab id="templates">{says.templates}</Tab>
          {(deleted.length > 0 || tab === 'deleted') && <Tab id="deleted">{says.deleted}</Tab>}
        </TabList>
        {tab === 'jobs' && live.length > 0 && (
          <SearchField className="jobs-search" aria-label={says.search} value={search} onChange={setSearch}>
            <Label className="unseen">{says.search}</Label>
            <Icon name="search" size={15} />
            <Input placeholder={says.searchHint} spellCheck={false} />
          </SearchField>
        )}
        <span className="jobs-buttons">
          <Button className="button" onPress={() => void begin()}>
            {says.new}
          </Button>
          <Button className="button primary" autoFocus onPress={close}>
            {says.back}
          </Button>
        </span>
      </header>
      <TabPanel id="jobs" className="jobs-panel">
        <JobList cards={live} search={search} close={close} />
      </TabPanel>
      <TabPanel id="templates" className="jobs-panel">
        <TemplateList close={close} />
      </TabPanel>
      <TabPanel id="deleted" className="jobs-panel">
        <JobList cards={deleted} search="" close={close} deleted />
      </TabPanel>
      <footer className="jobs-foot">
        <StorageLine />
        <Button className="button" onPress={() => void jobs.importAll()}>
          {words.jobs.archive.import}
        </Button>
        <Button className="button" onPress={() => void jobs.exportAll()}>
          {words.jobs.archive.export}
        </Button>
      </footer>
    </Tabs>
  );
}
