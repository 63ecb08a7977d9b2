// Every word of the page, in English; one file to translate.
import type { Around, Compared, Finding, Frame, Placed, Placement, Site, State, Verdict } from "./api";
import { figure } from "./format";

const WORK: Record<State["work"], string> = { single: "single crown", bridge: "bridge", arch: "full arch" };
const VERDICT: Record<string, string> = {
  use: "Use", "do not use": "Don't use", undecided: "Can't tell", none: "No verdict yet",
};

export const texts = {
  title: "stylobate",
  skip: "Go to the sites",
  measuring: "At work on the scan",
  kept: (folder: string) => `Kept in ${folder}`,
  shownFrom: (folder: string) => `Finished result, shown as it is: ${folder}`,
  undo: "Undo",
  redo: "Redo",
  theme: { auto: "Light or dark: as this machine", light: "Light", dark: "Dark" },
  keys: "Keys",
  close: "Close",
  choice: {
    scan: (d: string) => `scan ${d}`,
    again: (d: string) => `work: ${WORK[d as State["work"]] ?? d}`,
    add: () => "a site added by hand",
    drop: (d: string) => `site ${d} dropped`,
    part: (d: string) => `part: ${d}`,
    build: (d: string) => `built with: ${d}`,
  } as Record<string, (detail: string) => string>,
  work: WORK,
  workLabel: "What will be built",
  connecting: "Connecting to the program on this machine …",
  lost: "The program behind this page does not answer. Nothing is lost: all that was measured is kept in its folder. "
    + "Looking for it …",
  lostHow: (folder: string) => `If it was stopped, start it again: stylobate open ${folder}`,
  open: {
    label: "What is still open",
    nothing: "Nothing is open here.",
    noScan: "Drop a scan here",
    noScanMore: "STL, PLY or OBJ, as the scanner exports it. It stays on this machine.",
    noParts: "Which parts?",
    noPartsMore: "Drop the parts folder as a zip: the CAD surfaces of the scan bodies and their parts.toml.",
    choose: "Choose a file …",
    chooseParts: "Choose the parts …",
    replace: "Another scan …",
    dropNow: "Let go: the scan is measured at once",
    again: "Measure it again",
    measureThis: "Measure the scan that is here",
    missed: "Point to a missed scan body",
    pointNow: "Click the scan body in the picture, or press Enter to take the middle of the picture. Esc: leave it.",
    pointMiss: "There is no surface at that place. Click on the scan body itself.",
    stop: "Stop",
    dismiss: "All right",
  },
  stage: (stage: string, share: number) =>
    `${stage.charAt(0).toUpperCase()}${stage.slice(1)}${share > 0 ? `, ${Math.round(100 * share)} %` : " …"}`,
  headline: (sites: Site[], together: Verdict | null): string => {
    const n = sites.length;
    if (n === 0) return "No scan body found in this scan";
    const what = n === 1 ? "One site" : `${words(n)} sites`;
    const count = (v: Verdict) => sites.filter((site) => site.verdict === v).length;
    const [use, not, unsure] = [count("use"), count("do not use"), count("undecided")];
    if (use + not + unsure === 0) return `${what}, no verdict yet`;
    if (use === n && (together === null || together === "use")) return n === 1 ? "Use this site" : n === 2 ? "Use both sites" : `Use all ${words(n).toLowerCase()} sites`;
    if (use === n) return together === "do not use" ? "Each site holds; together they don't" : "Each site holds; together: can't tell";
    const parts = [
      use ? `use ${use}` : "", not ? `don't use ${not}` : "", unsure ? `can't tell ${unsure}` : "",
      n - use - not - unsure ? `no verdict on ${n - use - not - unsure}` : "",
    ].filter(Boolean);
    return `${what}: ${parts.join(", ")}`;
  },
  none: "None of the scan bodies in the parts folder fits anything in this scan. Point to one below, or drop a scan that shows them.",
  verdict: VERDICT,
  build: {
    title: "Parts on this site",
    none: "No part of the folder can stand here.",
    notBuilt: "Nothing is built on this site: its verdict is “Don't use”. Mend the cause and scan again.",
    lead: (chain: string, placed: Placed): string => {
      return `${chain}: the screw ${texts.build.leaves(placed.angle_to_aim_deg)}. ${placed.chosen ? "Chosen." : "Shown as the best of the options: nobody has chosen yet."}`;
    },
    leaves: (deg: number): string => deg < 0.05 ? "channel leaves as aimed" : `channel leaves ${figure(deg, 1)}° off the aim`,
    turn: (turn: number) => `turned to mark ${turn}`,
    turned: "Turn", tissue: "Tissue above the platform", room: "Room to the other jaw", off: "Channel off the aim",
    tissueOf: (least: number, greatest: number) => `${figure(least, 1)} to ${figure(greatest, 1)}`,
    options: "Options, best first",
    more: (n: number) => `${n} more`,
    take: "Take these parts",
    shown: "Parts",
    left: (why: string) => `Parts: ${why}`,
  },
  around: {
    title: "Tissue and the other jaw",
    role: { tissue: "Tissue", opposing: "Other jaw", bite: "Bite" } as Record<Around["role"], string>,
    what: {
      tissue: "the same jaw without scan bodies or healing caps: how high the tissue stands",
      opposing: "how much room there is above each site",
      bite: "both jaws closed: where the other jaw lies, if it was not exported in place",
    } as Record<Around["role"], string>,
    state: (one: Around): string =>
      one.joined || (one.role === "bite" ? "is here" : one.as_it_lies ? "is here, taken as it lies" : "is here, but not joined: it is not used yet"),
    choose: "Choose …", other: "Another …",
    chooseFor: (role: Around["role"]) => `Choose the scan: ${{ tissue: "tissue", opposing: "other jaw", bite: "bite" }[role]}`,
    join: "Join them now",
  },
  frame: {
    title: "A frame over these sites",
    doubtful: (sites: string[]) => `Not before ${sites.length === 1 ? `site ${sites[0]} is` : `sites ${sites.join(", ")} are`} cleared up: `
      + "what follows holds only if every site stood where it was measured.",
    lead: (frame: Frame): string => {
      if (frame.refused) return frame.refused;
      const within = frame.probability_within_limits ?? 0;
      const count = within > 0.9995 ? "in nearly every case" : within < 0.0005 ? "in hardly any case" : `${Math.round(1000 * within) / 10} times in 100`;
      return `A rigid frame made to these positions would rest with gaps of at most ${figure(frame.limit_um, 0)} µm, and at most ${figure(frame.side_limit_um, 0)} µm sideways, ${count}.`;
    },
    cause: (frame: Frame): string => {
      const worst = [...frame.sites].sort((a, b) => (b.share_worst ?? 0) - (a.share_worst ?? 0))[0];
      const best = (frame.probability_within_limits ?? 0) > 0.9995 ? undefined : frame.repeat[0];
      const first = worst ? `Site ${worst.site} is the worst one ${Math.round(100 * (worst.share_worst ?? 0))} times in 100.` : "";
      return best ? `${first} A second scan of site ${best.site} helps most: then ${Math.round(1000 * best.probability_within_limits) / 10} times in 100.` : first;
    },
    site: "Site", gap: "Gap, 95 %", side: "Sideways, 95 %", worst: "Worst one", largest: "Largest",
    path: ({ path, one_path }: Placement) => {
      if (one_path === null) return `Whether these parts share one path of insertion is open: ${path}.`;
      return one_path ? `These parts share one path of insertion: ${path}.`
        : `These parts share no path of insertion: ${path}. Choose others, or abutments that bring the axes together.`;
    },
    counted: (names: string[]) => `Counted: ${names.join(", ")}.`,
    limits: "No limit of misfit is proven. A try-in, the one-screw test and a radiograph decide.",
  },
  compared: {
    title: "Against the scan before",
    lead: (compared: Compared): string => {
      if (compared.refused) return `The scan before (${compared.before}) can't be compared: ${compared.refused}`;
      const { moved, common, tried } = compared;
      if (moved.length > 0) {
        return moved.map((one) => `Site ${one.site} stands otherwise than in ${compared.before}: ${figure(one.side_um, 0)} µm sideways, `
          + `${figure(one.height_um, 0)} µm in height (± ${figure(one.u95_um, 0)} µm)`
          + `${one.turn_deg === null ? "" : `, turned ${figure(one.turn_deg, 2)}°`}.`).join(" ");
      }
      if (tried === 0) {
        const distance = compared.farthest_um === null ? "" : ` The distance between them changed by ${figure(compared.farthest_um, 0)} µm at most.`;
        return `Only ${common} ${common === 1 ? "site is" : "sites are"} in both scans: which of them moved can't be named.${distance}`;
      }
      const found = compared.findable_um === null ? "" : ` A body standing ${figure(compared.findable_um, 0)} µm high would be found 95 times in 100.`;
      return `Nothing moved since ${compared.before}, as far as the two scans can show.${found}`;
    },
    moved: "If the scan body was not seated: seat it, torque it, scan this site again.",
  },
  beam: {
    title: "What could the picture show?",
    lead: "Mark the two ends of the scan body in the radiograph. Its true length tells how obliquely the beam fell, and so which gap this picture could show. That is noted with the check.",
    choose: "Choose the picture …",
    length: "True length of the part, mm", pixel: "Width of a pixel, mm (the sensor's data sheet states it)",
    first: "Click the middle of one end, or move with the arrow keys and press Enter.",
    second: "Now the other end.",
    both: "Both ends are marked; clicking again starts anew. With the two numbers below, “Passed” notes what this picture could show.",
    picture: "The radiograph. Arrow keys move the cross, with Shift in larger steps; Enter marks an end.",
    local: "The picture stays in this browser; only the marks are kept.",
    broken: "This file is no picture that the browser can show. Export it as PNG or JPEG.",
  },
  reason: (site: Site): { lead: string; because: string; remedy: string } => {
    const first = site.findings[0];
    const lead = VERDICT[site.verdict ?? "none"] ?? "";
    const given = site.because.replace(/\.$/, "");
    if (given || site.next) return { lead, because: given, remedy: site.next };
    if (site.verdict === "use") return { lead, because: "", remedy: "" };
    if (!site.verdict) {
      const because = first ? cause(first) : "measured, but not judged against the limits of the work";
      return { lead, because, remedy: first?.advice ?? "" };
    }
    if (first) return { lead, because: cause(first), remedy: first.advice };
    const because = site.verdict === "undecided" ? "the uncertainty reaches across the limit of the work" : "beyond the limit of the work";
    return { lead, because, remedy: "Scan this site again from all sides, then decide." };
  },
  seen: (findings: Finding[]): string => `Seen and allowed for: ${findings.map(cause).join("; ")}.`,
  doThis: "Do:",
  together: "The sites together",
  site: (name: string) => `Site ${name}`,
  siteOn: (body: string, connection: string) => `${body} on ${connection}`,
  bounds: {
    platform: "centre", axis: "axis", index: "turn", anyTurn: "any", um: "µm", deg: "°",
    of: "95 % bounds of this scan alone", total: "95 % bounds, all sources",
  },
  evidence: {
    findings: "Findings",
    deviation: "Deviation from the drawn part",
    rms: "rms", mean: "mean", p95: "95 % within", points: "points",
    coverage: "The scan shows",
    coverageOf: (share: number) => `${Math.round(100 * share)} % of the scan body`,
    budget: "Where the uncertainty comes from",
    budgetNote: "Standard uncertainty of the platform's centre, µm",
    noFigure: "no figure",
    turnOnly: (deg: number) => `turn only, ${figure(deg, 2)}°`,
    noBudget: "This result holds the scan's own share only. What the made part, its seating and the temperature add is not in it.",
    total: "all that have a figure",
    distances: "To the other sites",
    alternatives: "Other readings", noAlternatives: "Every other scan body or turn fits far worse.",
    odds: (odds: number) => odds < 1.5 ? "as likely: this scan can't tell" : `${figure(odds, odds < 10 ? 1 : 0)} × less likely`,
    turned: (deg: number) => (Math.abs(deg) < 0.05 ? "" : `, turned by ${figure(deg, 0)}°`),
  },
  actions: {
    part: "Scan body at this site",
    drop: "This is no site: drop it",
    section: "Section",
    sectionTurn: "Turn of the section about the axis",
    unseen: "Hatch what is not shown",
    posts: "Scan bodies",
    reduced: "Reduced picture",
    colours: "Colours",
    range: "Range of the colours",
    rangeValue: (um: number) => `± ${um} µm`,
    inside: "inside", outside: "outside",
    whole: "Whole arch",
    show: (name: string) => `Show site ${name}`,
  },
  case: {
    initials: "Your initials",
    title: (code: string) => `Case ${code}`,
    tooth: "Which tooth?", toothNone: "not named yet",
    quadrants: ["Upper right", "Upper left", "Lower left", "Lower right"],
    noTooth: "Open: which tooth?",
    checks: "Checks at the chair",
    checksOpen: (n: number) => `Open: ${n === 1 ? "one check" : `${n} checks`}, then release`,
    toRelease: "Open: release",
    released: (by: string) => `Released by ${by}`,
    passed: "passed", failed: "not passed", missing: "not done for this scan",
    pass: "Passed", fail: "Not passed", again: "Check again",
    ncm: "Torque used, in newton centimetres", unit: "Number of the scan body",
    target: (low: number, high: number) => low === high ? `target ${low} N·cm` : `target ${low} to ${high} N·cm`,
    reason: (open: number, verdict: boolean): string => {
      const why = [verdict ? "the verdict is not “Use”" : "", open === 1 ? "one check is open" : open ? `${open} checks are open` : ""];
      const words = why.filter(Boolean).join(" and ");
      return `${words.charAt(0).toUpperCase()}${words.slice(1)}: to release it all the same, write the reason`;
    },
    release: (tooth: string) => `Release tooth ${tooth} for the work`,
    withdraw: "Take the release back",
    handOver: "Hand over",
    notReleased: (n: number) => `${n === 1 ? "One site is" : `${n} sites are`} not released. The report says so; it does not stop the package.`,
    allReleased: "Every site is released.",
    report: "Report (PDF)", package: "Package for the laboratory",
    work: (work: string) => `for a ${work}`,
  },
  notShown: "What no scan can show",
  notShownLead: "Check these at the chair before the positions are used.",
  warnings: "About this scan",
  capital: (line: string): string => line.charAt(0).toUpperCase() + line.slice(1),
  showPlace: "Show the place",
  partial: "The scan itself is not here: only the surroundings of the sites are shown. Start with --scan to see all of it.",
  noSurface: "There is no surface to show: neither the scan nor the sites' coloured surfaces are here.",
  reduced: (share: number) => `Reduced picture, ${Math.max(1, Math.round(100 * share))} % of the triangles; figures are of the whole scan`,
  loading: "Fetching the surface …",
  noGl: "This browser draws no 3D here. Everything else works.",
  watch: (folder: string, last: string) => last ? `Watching ${folder}; last: ${last}` : `Watching ${folder} for a new scan`,
  triangles: (n: number) => `${n.toLocaleString("en")} triangles`,
  caution: "Decision support, not a medical device. A scan cannot show whether a scan body was fully seated: torque and a radiograph do. The licensed clinician decides.",
  picture: "The arch in 3D. Arrow keys turn it, plus and minus come nearer and go away, 1 to 9 go to a site, 0 shows the whole arch.",
  keysList: [
    ["1 … 9", "go to a site"], ["0", "whole arch"], ["N, P", "next, previous site"],
    ["Arrows", "turn the picture (when it has the focus)"], ["+, −", "nearer, away"],
    ["[, ]", "smaller, larger range of the colours"], ["S", "section on or off"], ["H", "hatch what is not shown"],
    ["D", "drop a scan: choose the file"], ["U, Shift+U", "undo, redo"], ["Esc", "back"], ["?", "this list"],
  ] as [string, string][],
};

function cause(finding: Finding): string {
  if (finding.size_deg !== null) {
    const bound = finding.u95_deg === null ? "" : ` (± ${figure(finding.u95_deg, 2)}°)`;
    return `${finding.cause}, ${figure(finding.size_deg, 2)}°${bound}`;
  }
  if (finding.size_um === null) return finding.cause;
  const bound = finding.u95_um === null ? "" : ` (± ${figure(finding.u95_um, 0)} µm)`;
  return `${finding.cause}, ${figure(finding.size_um, 0)} µm${bound}`;
}

export const causeText = cause;

function words(n: number): string {
  return ["No", "One", "Two", "Three", "Four", "Five", "Six", "Seven", "Eight", "Nine", "Ten", "Eleven", "Twelve"][n] ?? String(n);
}
