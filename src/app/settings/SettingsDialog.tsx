import './settings.css';
import { Label, Radio, RadioGroup } from 'react-aria-components';
import {
  formatFlow,
  formatLength,
  formatMoment,
  formatPressure,
  type InchStyle,
  inchStyles,
  locales,
  metricLengths,
} from '../../units/index.ts';
import { language, words } from '../../words/index.ts';
import { useApp, useBoard, useUi } from '../context.ts';
import { DialogBox, DialogFoot } from '../DialogBox.tsx';
import { Choice } from '../kitchen/fields.tsx';
import { browserLocale, chooseFigures } from './figures.ts';

const says = words.settings;

/** How this job and this browser show figures, dates and the page. Each choice holds at once. */
export default function SettingsDialog() {
  const { ui } = useApp();
  const open = useUi((state) => state.settings);
  const close = () => ui.setState({ settings: false });
  return (
    <DialogBox className="settings" title={says.heading} isOpen={open} onClose={close}>
      <section aria-label={says.job.heading}>
        <h3>{says.job.heading}</h3>
        <Units />
        <p className="hint">{says.job.note}</p>
      </section>
      <section aria-label={says.reader.heading}>
        <h3>{says.reader.heading}</h3>
        <Figures />
        <p className="hint">{says.reader.note}</p>
      </section>
      <section aria-label={says.theme.label}>
        <Theme />
      </section>
      <DialogFoot onLeave={close} />
    </DialogBox>
  );
}

function Units() {
  const { board } = useApp();
  const units = useBoard((state) => state.units);
  return (
    <OneOf
      label={says.job.units}
      value={units}
      choices={[
        { id: 'imperial', name: says.job.imperial },
        { id: 'metric', name: says.job.metric },
      ]}
      onChoose={(next) =>
        board.dispatch(words.edits.job.changeUnits, (job) => {
          job.units = next;
        })
      }
    />
  );
}

const inchChoices = inchStyles.map((style) => ({ id: String(style), name: inchName(style), style }));

function inchName(style: InchStyle): string {
  if (style === 'decimal inches') return says.inches.decimalInches;
  if (style === 'decimal feet') return says.inches.decimalFeet;
  return style === 1 ? says.inches.whole : says.inches.nearest(`1/${style}`);
}

const metricChoices = metricLengths.map((id) => ({ id, name: says.metric[id] }));

const asBrowser = 'browser';
const nameOf = new Intl.DisplayNames([language], { type: 'language' });
const localeChoices = () => {
  const own = browserLocale();
  return [
    { id: asBrowser, name: says.locale.browser(own === null ? says.locale.plain : nameIn(own)) },
    ...locales.map((id) => ({ id, name: nameIn(id) })).sort((a, b) => a.name.localeCompare(b.name, language)),
  ];
};

function nameIn(tag: string): string {
  return nameOf.of(tag) ?? tag;
}

function Figures() {
  const { ui } = useApp();
  const { inches, metric, locale } = useUi((state) => state.figures);
  return (
    <div className="settings-figures">
      <Choice
        label={says.inches.label}
        choices={inchChoices}
        value={String(inches)}
        onChoose={(id) =>
          chooseFigures(ui, { inches: inchChoices.find((choice) => choice.id === id)?.style ?? inches })
        }
      />
      <Choice
        label={says.metric.label}
        choices={metricChoices}
        value={metric}
        onChoose={(id) => chooseFigures(ui, { metric: id })}
      />
      <div className="settings-wide">
        <Choice
          label={says.locale.label}
          choices={localeChoices()}
          value={locale ?? asBrowser}
          onChoose={(id) => chooseFigures(ui, { locale: id === asBrowser ? null : id })}
        />
      </div>
      <Sample />
    </div>
  );
}

/** What the choices make of a few figures. */
function Sample() {
  const units = useBoard((state) => state.units);
  const { length, flow, pressure, date, label } = says.sample;
  const rows = [
    { name: length, text: formatLength(1.03, units) },
    { name: flow, text: formatFlow(6.1, units) },
    { name: pressure, text: formatPressure(6.2, units) },
    { name: date, text: formatMoment(new Date()) },
  ];
  return (
    <dl className="settings-sample" aria-label={label}>
      {rows.map(({ name, text }) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>{text}</dd>
        </div>
      ))}
    </dl>
  );
}

function Theme() {
  const { board } = useApp();
  const theme = useBoard((state) => state.theme);
  return (
    <OneOf
      label={says.theme.label}
      value={theme === 'dark' ? 'dark' : 'light'}
      choices={[
        { id: 'light', name: says.theme.light },
        { id: 'dark', name: says.theme.dark },
      ]}
      onChoose={(next) => board.set({ theme: next })}
    />
  );
}

interface OneOfProps<Id extends string> {
  readonly label: string;
  readonly value: Id;
  readonly choices: readonly { readonly id: Id; readonly name: string }[];
  readonly onChoose: (id: Id) => void;
}

function OneOf<Id extends string>({ label, value, choices, onChoose }: OneOfProps<Id>) {
  return (
    <RadioGroup
      className="field choice"
      orientation="horizontal"
      value={value}
      onChange={(next) => {
        const chosen = choices.find(({ id }) => id === next);
        if (chosen && chosen.id !== value) onChoose(chosen.id);
      }}
    >
      <Label>{label}</Label>
      {choices.map(({ id, name }) => (
        <Radio key={id} value={id} className="radio">
          {name}
        </Radio>
      ))}
    </RadioGroup>
  );
}
