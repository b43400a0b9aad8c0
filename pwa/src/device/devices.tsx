import { useEffect, useState } from "preact/hooks";
import { pairing, type Role } from "../store/pairing.ts";
import { whenText } from "../units/when.ts";
import { type Device, listDevices, revoke } from "./ask.ts";
import { text } from "./strings.ts";

/** Every device that the shop lets in; another than this one can be revoked here. */
export function Devices() {
  const [list, setList] = useState<Device[]>([]);
  const [next, setNext] = useState<string | null>(null);
  const [problem, setProblem] = useState("");
  const load = async (before: Device[], after: string | null) => {
    const answer = await listDevices(after);
    setProblem("problem" in answer ? answer.problem : "");
    if ("problem" in answer) return;
    setList([...before, ...answer.items]);
    setNext(answer.next);
  };
  const token = pairing.value?.token;
  useEffect(() => void load([], null), [token]);
  return (
    <section class="panel">
      <h2>{text.devices}</h2>
      {problem && <p role="status">{problem}</p>}
      <ul class="rows">
        {list.map((device) => (
          <li key={device.id}>
            <Row device={device} onRevoked={() => void load([], null)} />
          </li>
        ))}
      </ul>
      {next && (
        <button type="button" class="button" onClick={() => void load(list, next)}>
          {text.more}
        </button>
      )}
    </section>
  );
}

function Row({ device, onRevoked }: { device: Device; onRevoked(): void }) {
  const [asked, setAsked] = useState(false);
  const [problem, setProblem] = useState("");
  const here = device.id === pairing.value?.deviceId;
  const seen = device.last_seen_at ? text.seen(whenText(device.last_seen_at)) : text.neverSeen;
  const away = async () => {
    const said = await revoke(device.id);
    setProblem(said ?? "");
    if (said === null) onRevoked();
  };
  return (
    <div class="row device-row">
      <span>
        {device.name}
        <span class="small shelf-summary">
          {text.roleShort[device.role as Role]} · {here ? text.thisOne : seen}
        </span>
        {problem && <span class="small">{problem}</span>}
      </span>
      {!here &&
        (asked ? (
          <span class="buttons">
            <button type="button" class="button" onClick={() => void away()}>
              {text.sureRevoke(device.name)}
            </button>
            <button type="button" class="button" onClick={() => setAsked(false)}>
              {text.cancel}
            </button>
          </span>
        ) : (
          <button
            type="button"
            class="button"
            aria-label={text.revokeNamed(device.name)}
            onClick={() => setAsked(true)}
          >
            {text.revoke}
          </button>
        ))}
    </div>
  );
}
