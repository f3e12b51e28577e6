import { type ReactNode, useEffect, useMemo, useRef, useState } from 'react';
import {
  Button,
  Checkbox,
  Dialog,
  FieldError,
  Heading,
  Input,
  Label,
  Modal,
  ModalOverlay,
  TextField,
} from 'react-aria-components';
import { longestLink, longLink, shareFragment } from '../../files/share.ts';
import { formatLarge } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { useApp, useBoard, useUi } from '../context.ts';
import { Icon } from '../icons.tsx';
import { capitalized } from '../wording.ts';
import { openShared } from './arrive.ts';
import './share.css';

const says = words.share;

/** The link that holds the job on the board, or the field that takes such a link. */
export default function ShareDialog() {
  const { ui } = useApp();
  const what = useUi((state) => state.sharing);
  const close = () => ui.setState({ sharing: null });
  return (
    <ModalOverlay
      className="overlay"
      isOpen={what !== null}
      isDismissable
      onOpenChange={(open) => !open && close()}
    >
      <Modal className="modal share">
        <Dialog className="dialog">
          {what === 'open' ? <Taking close={close} /> : <Giving close={close} />}
        </Dialog>
      </Modal>
    </ModalOverlay>
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
      <Heading slot="title">{says.dialog.title}</Heading>
      <p>{says.dialog.explains}</p>
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
      <div className="dialog-buttons">
        {copied && (
          <span className="share-said">{copied === 'yes' ? says.dialog.copied : says.dialog.notCopied}</span>
        )}
        <Button className="button" onPress={close}>
          {says.dialog.close}
        </Button>
        <Button className="button primary" autoFocus onPress={() => void copy()}>
          {says.dialog.copy}
        </Button>
      </div>
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
    <>
      <Heading slot="title">{says.open.title}</Heading>
      <p>{says.open.explains}</p>
      <TextField
        className="field"
        autoFocus
        value={address}
        isInvalid={reasons.length > 0}
        onChange={(next) => {
          setAddress(next);
          setReasons([]);
        }}
        onKeyDown={(event) => event.key === 'Enter' && void open()}
      >
        <Label>{says.open.field}</Label>
        <Input spellCheck={false} autoComplete="off" placeholder="…#job=1." />
        <FieldError className="field-error">
          {reasons.slice(0, 3).map((reason) => (
            <span key={reason}>{capitalized(reason)}. </span>
          ))}
        </FieldError>
      </TextField>
      <div className="dialog-buttons">
        <Button className="button" onPress={close}>
          {says.open.cancel}
        </Button>
        <Button className="button primary" isDisabled={address.trim() === ''} onPress={() => void open()}>
          {says.open.open}
        </Button>
      </div>
    </>
  );
}
