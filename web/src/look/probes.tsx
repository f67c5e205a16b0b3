/// Where the probes go, drawn for each thing that is read; in words where no drawing fits.
/// Probe A is filled, probe B is open, and each carries its letter.

import type { JSX } from "preact";
import { pictureOf, type Picture } from "./probe_pick";
import { Drawing } from "./sheet";

export function Probes(props: { kind: string; title: string; probes: string }): JSX.Element | null {
  const { kind, title, probes } = props;
  const picture = pictureOf(kind, title, probes);
  if (!picture) return probes === "" ? null : <p class="probe-words only"><strong>Where:</strong> {probes}</p>;
  const { words, draw, h = 108 } = drawings[picture];
  return (
    <>
      <Drawing w={360} h={h} class="probes" words={probes === "" ? words : `${words}: ${probes}`}>{draw()}</Drawing>
      {probes === "" ? null : <p class="probe-words">{probes}</p>}
    </>
  );
}

/// A probe whose tip stands at x, y. Not turned it comes from below; 90 from the left.
function Probe(props: { x: number; y: number; is: "A" | "B"; turn?: number }): JSX.Element {
  const { x, y, is, turn = 0 } = props;
  return (
    <g class={`probe probe-${is.toLowerCase()}`} transform={`translate(${x} ${y}) rotate(${turn})`}>
      <path class="probe-tip" d="M0 0V15" />
      <rect class="probe-handle" x={-8.5} y={14} width={17} height={24} rx={5} />
      <text transform={`translate(0 26) rotate(${-turn})`} y={4.7} text-anchor="middle">{is}</text>
    </g>
  );
}

function Label(props: { x: number; y: number; text: string; end?: boolean; middle?: boolean }): JSX.Element {
  return <text class="plan-label" x={props.x} y={props.y} text-anchor={props.end ? "end" : props.middle ? "middle" : "start"}>{props.text}</text>;
}

const box = (x: number, y: number, width: number, height: number, rx = 3): JSX.Element => <rect class="outline filled" x={x} y={y} width={width} height={height} rx={rx} />;
const line = (d: string): JSX.Element => <path class="outline" d={d} />;
const thin = (d: string): JSX.Element => <path class="thin" d={d} />;
const cable = (d: string): JSX.Element => <path class="cable" d={d} />;

/// A coil's case with its winding; the towers and studs come on top.
function coilCase(): JSX.Element {
  return <>{box(118, 14, 124, 44, 6)}{thin("M134 36H142C142 22 156 22 156 36C156 22 170 22 170 36C170 22 184 22 184 36C184 22 198 22 198 36C198 22 212 22 212 36H226")}</>;
}
const tower = (x: number, to: 1 | -1): JSX.Element => <path class="outline filled" d={`M${x} 24L${x + 34 * to} 28V44L${x} 48Z`} />;
/// A contactor: can, two large studs on top, two small ones below.
function contactor(): JSX.Element {
  return <>{box(120, 26, 120, 36, 8)}{box(134, 4, 14, 22, 1)}{box(212, 4, 14, 22, 1)}{cable("M50 24H134M226 24H310")}{box(160, 62, 7, 9, 1)}{box(193, 62, 7, 9, 1)}</>;
}
/// A thin blade of known thickness, with its end where the gap is.
const feeler = (x: number, y: number): JSX.Element => <path class="feeler" d={`M${x} ${y}H${x + 118}V${y + 12}H${x + 30}L${x} ${y + 6}Z`} />;

const drawings: { [P in Picture]: { words: string; h?: number; draw: () => JSX.Element } } = {
  "lead": {
    words: "A lead with one probe at each end",
    h: 86,
    draw: () => <>{cable("M62 30C120 4 170 62 232 42S290 34 298 34")}{box(30, 20, 32, 22)}{box(298, 24, 36, 20)}<Probe x={46} y={43} is="A" /><Probe x={316} y={45} is="B" /><Label x={64} y={76} text="tower end" /><Label x={298} y={78} text="plug end" end /></>,
  },
  "insulation": {
    words: "A lead with one probe on its conductor and one on its screen, the far end free",
    h: 86,
    draw: () => <>{thin("M28 30H96M296 30H316")}{box(58, 22, 38, 16, 2)}<rect class="outline filled" x={84} y={16} width={190} height={28} rx={4} />{thin("M92 44L106 16M112 44L126 16M132 44L146 16M152 44L166 16M172 44L186 16M192 44L206 16M212 44L226 16M232 44L246 16M252 44L266 16M92 16L106 44M112 16L126 44M132 16L146 44M152 16L166 44M172 16L186 44M192 16L206 44M212 16L226 44M232 16L246 44M252 16L266 44")}{box(274, 22, 22, 16, 2)}<Probe x={40} y={31} is="A" /><Probe x={180} y={45} is="B" /><Label x={56} y={64} text="conductor" /><Label x={196} y={78} text="screen" /><Label x={352} y={64} text="far end free" end /></>,
  },
  "coil-primary": {
    words: "A coil with both probes on its small studs",
    draw: () => <>{coilCase()}{tower(242, 1)}{box(146, 58, 8, 8, 1)}{box(206, 58, 8, 8, 1)}<Probe x={150} y={66} is="A" /><Probe x={210} y={66} is="B" /><Label x={136} y={86} text="primary stud" end /><Label x={224} y={86} text="primary stud" /></>,
  },
  "coil-secondary": {
    words: "A coil with one probe in its tower and one on the other end of its winding",
    draw: () => <>{coilCase()}{tower(242, 1)}{box(146, 58, 8, 8, 1)}<Probe x={272} y={44} is="A" /><Probe x={150} y={66} is="B" /><Label x={288} y={66} text="tower" /><Label x={138} y={88} text="stud or ground" end /></>,
  },
  "coil-double-ended": {
    words: "A coil with two towers, one probe in each, leads off",
    h: 88,
    draw: () => <>{coilCase()}{tower(242, 1)}{tower(118, -1)}<Probe x={92} y={44} is="A" /><Probe x={268} y={44} is="B" /><Label x={76} y={68} text="tower" end /><Label x={284} y={68} text="tower" /><Label x={180} y={82} text="both leads off" middle /></>,
  },
  "plug-gap": {
    words: "The end of a plug with a feeler between its electrodes",
    draw: () => <>{box(120, 4, 104, 38, 2)}{thin("M120 13H224M120 22H224M120 31H224")}<path class="outline filled" d="M152 42H192L184 56H160Z" />{box(166, 56, 12, 10, 0)}<path class="outline filled" d="M206 42H222V96H160V84H206Z" />{feeler(174, 69)}<Label x={298} y={79} text="feeler" /><Label x={154} y={66} text="centre electrode" end /><Label x={154} y={95} text="ground electrode" end /></>,
  },
  "plug-resistor": {
    words: "A plug with one probe in its well and one on its centre electrode",
    draw: () => <>{box(92, 22, 92, 34, 4)}{thin("M92 33H130M92 45H130")}{box(184, 16, 34, 46, 2)}{box(218, 24, 56, 30, 1)}{thin("M228 24V54M238 24V54M248 24V54M258 24V54")}{line("M274 39H288M274 27H296V33")}<path class="hidden-line" d="M92 39H140" /><circle class="leader-end" cx={142} cy={39} r={3.5} /><Probe x={92} y={39} is="A" turn={90} /><Probe x={286} y={41} is="B" /><Label x={60} y={80} text="down the well, to its contact" /><Label x={356} y={98} text="centre electrode" end /></>,
  },
  "condenser": {
    words: "A condenser with one probe on its lead and one on its can",
    draw: () => <>{box(110, 14, 100, 44, 10)}{thin("M126 14V58")}{cable("M210 36C236 36 240 26 270 30")}{box(270, 22, 26, 16, 8)}<Probe x={283} y={39} is="A" /><Probe x={160} y={59} is="B" /><Label x={300} y={64} text="lead" /><Label x={148} y={80} text="can" end /></>,
  },
  "point-gap": {
    words: "Breaker points with the rubbing block on the lobe of the cam and a feeler between the contacts",
    draw: () => <><path class="outline filled" d="M70 76A24 24 0 1 1 92 52L104 46L92 70A24 24 0 0 1 70 76Z" /><circle class="outline" cx={70} cy={52} r={5} />{line("M104 46V34H236")}{box(104, 34, 10, 14, 1)}{box(178, 34, 16, 14, 0)}{box(178, 62, 16, 14, 0)}{line("M140 76H236V90H140Z")}{feeler(188, 49)}<Label x={312} y={59} text="feeler" /><Label x={116} y={26} text="block on the lobe" /><Label x={242} y={90} text="fixed point" /></>,
  },
  "timing": {
    words: "A degree disc on the propeller flange, a timing light between the P-lead and the case",
    draw: () => <><circle class="outline filled" cx={88} cy={54} r={44} /><circle class="outline" cx={88} cy={54} r={12} />{thin("M88 10V22M110 16L104 26M126 32L116 38M132 54H120M126 76L116 70M110 92L104 82M88 98V86M66 92L72 82M50 76L60 70M44 54H56M50 32L60 38M66 16L72 26")}{line("M88 22L74 54M88 4V16")}<path class="arrow" d="M88 18L84 6H92Z" />{box(178, 10, 44, 30, 4)}<circle class="outline" cx={190} cy={25} r={6} /><circle class="outline" cx={210} cy={25} r={6} />{cable("M222 20H300M222 32C240 32 240 50 262 50")}<Probe x={300} y={21} is="A" /><Probe x={262} y={51} is="B" /><Label x={315} y={52} text="P-lead" /><Label x={250} y={80} text="case" end /><Label x={146} y={104} text="degrees before top" /></>,
  },
  "cable-drop": {
    words: "A cable between two studs, one probe on each stud, while the current flows",
    draw: () => <>{box(60, 36, 64, 44, 3)}{box(106, 20, 14, 16, 1)}{cable("M122 28H180C220 28 220 40 258 40H272")}<circle class="outline filled" cx={310} cy={40} r={26} />{box(272, 34, 14, 12, 1)}{line("M300 48L310 30L320 48")}<Probe x={105} y={26} is="A" turn={90} /><Probe x={279} y={47} is="B" /><Label x={136} y={58} text="on the studs," /><Label x={136} y={74} text="not on the lugs" /><Label x={60} y={98} text="battery" /><Label x={298} y={84} text="starter" /><Label x={180} y={102} text="while it draws" middle /></>,
  },
  "contactor-contacts": {
    words: "A contactor with one probe on each of its large studs",
    draw: () => <>{contactor()}<Probe x={133} y={10} is="A" turn={90} /><Probe x={227} y={10} is="B" turn={-90} /><Label x={106} y={48} text="large stud" end /><Label x={254} y={48} text="large stud" /><Label x={180} y={92} text="small: its coil" middle /></>,
  },
  "contactor-coil": {
    words: "A contactor with the probes on the ends of its coil, the small studs or one of them and its case",
    draw: () => <>{contactor()}<Probe x={163} y={66} is="A" /><Probe x={197} y={66} is="B" /><Label x={148} y={90} text="small stud" end /><Label x={212} y={90} text="small stud or case" /><Label x={58} y={46} text="large: contacts" middle /></>,
  },
  "bond": {
    words: "Two metal parts joined by a strap, one probe on the bare metal of each",
    draw: () => <>{box(28, 12, 86, 44, 3)}{box(246, 12, 86, 44, 3)}{thin("M246 24L258 12M246 40L274 12M246 56L290 12M262 56L306 12M278 56L322 12M294 56L332 18M310 56L332 34")}<path class="strap" d="M96 30C140 62 220 62 264 30" /><circle class="outline filled" cx={96} cy={30} r={5} /><circle class="outline filled" cx={264} cy={30} r={5} /><Probe x={52} y={50} is="A" /><Probe x={308} y={50} is="B" /><Label x={70} y={80} text="bare metal" /><Label x={290} y={80} text="bare metal" end /><Label x={180} y={34} text="strap" middle /></>,
  },
  "battery": {
    words: "A battery with probe A on its positive post and probe B on its negative post",
    draw: () => <>{box(90, 36, 180, 50, 4)}{box(120, 20, 22, 16, 2)}{box(218, 20, 22, 16, 2)}{line("M160 61H172M166 55V67M192 61H204")}<Probe x={120} y={28} is="A" turn={90} /><Probe x={240} y={28} is="B" turn={-90} /><Label x={78} y={62} text="positive" end /><Label x={282} y={62} text="negative" /></>,
  },
  "speed-drop": {
    words: "A switch turned from both to one system, and the speed before and after",
    draw: () => <><circle class="outline filled" cx={86} cy={56} r={30} />{line("M86 56L104 34")}<path class="hidden-line" d="M86 56L116 56" />{thin("M108 30L114 23M118 56H126")}<Label x={118} y={24} text="one" /><Label x={130} y={61} text="both" /><path class="outline" d="M206 88A48 48 0 1 1 286 88" />{thin("M200 62H208M206 40L213 44M222 24L226 31M246 18V26M270 24L266 31M286 40L279 44M292 62H284")}<path class="hidden-line" d="M246 62L282 40" />{line("M246 62L270 30")}<circle class="leader-end" cx={246} cy={62} r={3} /><Label x={294} y={40} text="both" /><Label x={274} y={18} text="one" /><Label x={246} y={98} text="drop" middle /></>,
  },
  "two-ends": {
    words: "A part with one probe on each of its two ends",
    h: 84,
    draw: () => <>{cable("M70 34H130M230 34H290")}{box(130, 20, 100, 28, 4)}{box(52, 26, 18, 16, 8)}{box(290, 26, 18, 16, 8)}<Probe x={61} y={43} is="A" /><Probe x={299} y={43} is="B" /><Label x={78} y={76} text="one end" /><Label x={282} y={76} text="other end" end /></>,
  },
};
