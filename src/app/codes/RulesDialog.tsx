import './codes.css';
import { Button, Checkbox } from 'react-aria-components';
import { limitWords } from '../../advice/codes/check.ts';
import { sourceWords } from '../../graph/derive/text.ts';
import { resetRules, setRule } from '../../graph/edits/index.ts';
import { type RuleLimit, type RuleRow, ruleLimit, ruleOn, rules } from '../../graph/rules.ts';
import { type Parsed, parseFlow, parseLength, parseVelocity, type System } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { useApp, useBoard, useUi } from '../context.ts';
import { QuantityField } from '../controls.tsx';
import { DialogBox, DialogFoot, DialogScroll } from '../DialogBox.tsx';
import { readPlain } from '../kitchen/reading.ts';

const says = words.codes.rules;

/** Which rules this job is held to, and with which limits. Each change is an edit like any other. */
export default function RulesDialog() {
  const { board, ui } = useApp();
  const open = useUi((state) => state.rules);
  const profile = useBoard((state) => state.job.profile);
  const close = () => ui.setState({ rules: false });
  return (
    <DialogBox width="wide" title={says.heading} isOpen={open} onClose={close}>
      <p className="dialog-lead">{says.hint}</p>
      <DialogScroll label={says.list} className="rule-list">
        {rules.map((rule) => (
          <Rule key={rule.id} rule={rule} />
        ))}
      </DialogScroll>
      <DialogFoot onLeave={close}>
        <Button
          className="button"
          isDisabled={profile === undefined}
          onPress={() => board.dispatch(words.edits.codes.resetRules, resetRules)}
        >
          {says.resetAll}
        </Button>
      </DialogFoot>
    </DialogBox>
  );
}

function Rule({ rule }: { rule: RuleRow }) {
  const { board } = useApp();
  const profile = useBoard((state) => state.job.profile);
  const units = useBoard((state) => state.units);
  const on = ruleOn(profile, rule.id);
  const limit = ruleLimit(profile, rule.id);
  const set = (next: RuleLimit | null) =>
    board.dispatch(next === null ? words.edits.codes.takeBackLimit : words.edits.codes.changeLimit, (job) =>
      setRule(job, rule.id, { limit: next }),
    );
  const values = limit === undefined ? [] : typeof limit.value === 'number' ? [limit.value] : limit.value;
  return (
    <div className="code-rule">
      <Checkbox
        className="tick"
        isSelected={on}
        onChange={(next) =>
          board.dispatch(next ? words.edits.codes.ruleOn : words.edits.codes.ruleOff, (job) =>
            setRule(job, rule.id, { off: !next }),
          )
        }
      >
        <span className="tick-box" aria-hidden="true" />
        {rule.name}
      </Checkbox>
      <p>{rule.what}</p>
      <p className="source">
        {words.codes.results.source(rule.source, sourceWords[rule.sourceKind], rule.edition)}
      </p>
      {on && values.length > 0 && (
        <div className="rule-limits">
          {values.map((value, i) => (
            <QuantityField
              // biome-ignore lint/suspicious/noArrayIndexKey: a limit has one figure, or a least and a most
              key={i}
              label={(values.length === 1 ? says.limitOf : i === 0 ? says.leastOf : says.mostOf)(
                rule.name.charAt(0).toLowerCase() + rule.name.slice(1),
              )}
              value={limitWords(value, rule.unit, units)}
              parse={(text) => inBand(readLimit(text, rule, units), values, i)}
              onCommit={(next) => set(banded(values, i, next))}
            />
          ))}
          {limit?.overridden && (
            <span className="rule-own">
              {says.ownLimit(rule.printed ?? '')}
              <Button className="button" onPress={() => set(null)}>
                {says.takeBack}
              </Button>
            </span>
          )}
        </div>
      )}
    </div>
  );
}

function banded(values: readonly number[], index: number, next: number): RuleLimit {
  const [least, most] = values;
  if (least === undefined || most === undefined) return next;
  return index === 0 ? [next, most] : [least, next];
}

/** The least of a band stays below its most. */
function inBand(read: Parsed, values: readonly number[], index: number): Parsed {
  const other = values[1 - index];
  if (!read.ok || values.length < 2 || other === undefined) return read;
  const fits = index === 0 ? read.value < other : read.value > other;
  return fits ? read : { ok: false, message: says.leastBelowMost };
}

function readLimit(text: string, rule: RuleRow, units: System): Parsed {
  const read = readUnit(text, rule, units);
  return read.ok && read.value < 0 ? { ok: false, message: says.below0 } : read;
}

function readUnit(text: string, { unit }: RuleRow, units: System): Parsed {
  switch (unit) {
    case 'm':
      return parseLength(text, units);
    case 'm/s':
      return parseVelocity(text, units);
    case 'm3/s':
      return parseFlow(text, units);
    case 'turns':
      return readPlain(text, {
        what: says.turnsRange,
        low: 0,
        high: 50,
        unit: /\s*turns?$/,
        whole: true,
      });
    default:
      return readPlain(text, { what: says.diametersRange, low: 0, high: 50, unit: /\s*diameters?$/ });
  }
}
