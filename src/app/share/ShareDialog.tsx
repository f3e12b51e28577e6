import { type ReactNode, useEffect, useMemo, useRef, useState } from 'react';
import { Checkbox, FieldError, Form, Input, Label, TextField } from 'react-aria-components';
import { longestLink, longLink, shareFragment } from '../../files/share.ts';
import { formatLarge } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { useApp, useBoard, useUi } from '../context.ts';
import { DialogBox, DialogFoot } from '../DialogBox.tsx';
import { Icon } from '../icons.tsx';
import { capitalized } from '../wording.ts';
import { openShared } from './arrive.ts';

const says = words.share;

/** The link that holds the job on the board, or the field that takes such a link. */
export default function ShareDialog() {
  const { ui } = useApp();
  const what = useUi((state) => state.sharing);
  const close = () => ui.setState({ sharing: null });
  return (
    <DialogBox
      title={what === 'open' ? says.open.title : says.dialog.title}
      isOpen={what !== null}
      onClose={close}
    >
      {what === 'open' ? <Taking close={close} /> : <Giving close={close} />}
    </DialogBox>
  );
}

/** Addresses that mean the machine that the program runs on, whichever it is. */
const local = /^(localhost|127\.\d+\.\d+\.\d+|\[::1\])$/;

function Giving({ close }: { close: () => void }) {
  const { say } = useApp();
  const job = useBoard((state) => state.job);
  const pictures = job.underlays.length;
  const [underlays, setUnderlays] = useState(false);
  const [copied, setCopied] = useState<'yes' | 'no' | null>(null);
  const field = useRef<HTMLInputElement>(null);
  const { origin, host, hostname, pathname } = window.location;
  const link = useMemo(
    () => `${origin}${pathname}${shareFragment(job, { underlays })}`,
    [origin, pathname, job, underlays],
  );
  const copy = async () => {
    const done = await copyText(link);
    setCopied(done ? 'yes' : 'no');
    say(done ? says.dialog.copied : says.dialog.notCopied);
    if (!done) field.current?.select();
  };
  return (
    <>
      <p className="dialog-lead">{says.dialog.explains}</p>
      <TextField className="field" value={link} isReadOnly>
        <Label>{says.dialog.field}</Label>
        <Input ref={field} spellCheck={false} onFocus={(event) => event.currentTarget.select()} />
      </TextField>
      <Length of={link.length} />
      {pictures > 0 && (
        <>
          <Checkbox
            className="check"
            isSelected={underlays}
            onChange={(next) => {
              setUnderlays(next);
              setCopied(null);
            }}
          >
            <span className="check-box">
              <Icon name="tick" size={14} />
            </span>
            {says.dialog.include(pictures)}
          </Checkbox>
          {!underlays && <p className="hint">{says.dialog.leftOut(pictures)}</p>}
        </>
      )}
      {local.test(hostname) && <p className="hint">{says.dialog.local(host)}</p>}
      <DialogFoot
        onLeave={close}
        leave="close"
        main={{ label: says.dialog.copy, onPress: () => void copy() }}
      >
        {copied && <p>{copied === 'yes' ? says.dialog.copied : says.dialog.notCopied}</p>}
      </DialogFoot>
    </>
  );
}

/** How long the link is, and whether that is too long for what usually carries it. */
function Length({ of }: { of: number }): ReactNode {
  const count = formatLarge(of);
  if (of > longestLink) return <p className="caution">{says.dialog.tooLong(count)}</p>;
  if (of > longLink) return <p className="caution">{says.dialog.long(count)}</p>;
  return <p className="hint">{says.dialog.length(count)}</p>;
}

async function copyText(text: string): Promise<boolean> {
  try {
    await navigator.clipboard.writeText(text);
    return true;
  } catch {
    return false;
  }
}

function Taking({ close }: { close: () => void }) {
  const app = useApp();
  const [address, setAddress] = useState('');
  const [reasons, setReasons] = useState<readonly string[]>([]);
  const there = useRef(true);
  useEffect(() => {
    there.current = true;
    return () => {
      there.current = false;
    };
  }, []);
  const open = async () => {
    const read = await openShared(app, address);
    if (!there.current) return;
    if (read.ok) close();
    else setReasons(read.problems.map(({ path, message }) => (path ? `${path}: ${message}` : message)));
  };
  return (
    <Form
      className="dialog-form"
      onSubmit={(event) => {
        event.preventDefault();
        void open();
      }}
    >
      <p className="dialog-lead">{says.open.explains}</p>
      <TextField
        className="field"
        autoFocus
        value={address}
        isInvalid={reasons.length > 0}
        onChange={(next) => {
          setAddress(next);
          setReasons([]);
        }}
      >
        <Label>{says.open.field}</Label>
        <Input spellCheck={false} autoComplete="off" placeholder="…#job=1." />
        <FieldError className="field-error">
          {reasons.slice(0, 3).map((reason) => (
            <span key={reason}>{capitalized(reason)}. </span>
          ))}
        </FieldError>
      </TextField>
      <DialogFoot
        onLeave={close}
        focus="field"
        main={{ label: says.open.open, isDisabled: address.trim() === '' }}
      />
    </Form>
  );
}
