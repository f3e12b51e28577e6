import { useState } from 'react';
import { Checkbox } from 'react-aria-components';
import { words } from '../../words/index.ts';
import { useApp, useBoard, useUi } from '../context.ts';
import { Icon } from '../icons.tsx';
import { NameDialog } from './NameDialog.tsx';

const says = words.jobs.template.save;

/** Asks what a template shall be called and whether the route goes with it. */
export default function TemplateDialog() {
  const open = useUi((state) => state.savingTemplate);
  return open ? <Asking /> : null;
}

function Asking() {
  const { ui, jobs } = useApp();
  const title = useBoard((state) => state.job.title);
  const [withRoute, setWithRoute] = useState(false);
  return (
    <NameDialog
      title={says.title}
      lead={says.lead}
      label={says.name}
      value={title}
      take={says.save}
      onTake={(name) => void jobs.saveTemplate(name, withRoute)}
      onClose={() => ui.setState({ savingTemplate: false })}
    >
      <Checkbox className="check" isSelected={withRoute} onChange={setWithRoute}>
        <span className="check-box" aria-hidden="true">
          <Icon name="tick" size={12} />
        </span>
        {says.route}
      </Checkbox>
    </NameDialog>
  );
}
