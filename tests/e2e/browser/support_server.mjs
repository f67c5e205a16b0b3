// The real server on a fresh demo binder, for one test: started, killed, started again.
import { execFileSync, spawn } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { root } from "./support.mjs";

export const program = process.env.WITNESSMARK ?? join(root, "build", "release", "bin", "witnessmark");

export function command(...words) {
  return execFileSync(program, words, { encoding: "utf8", stdio: ["ignore", "pipe", "pipe"] });
}

export class Bench {
  constructor() {
    this.folder = mkdtempSync(join(tmpdir(), "wm-walk-"));
    const made = /Made (.*) \(\d+ events/.exec(command("demo", this.folder));
    if (!made) throw new Error("the demo binder was not made");
    this.binder = made[1];
  }

  /// The same port again, so that a page left open finds it.
  async start(port = 0) {
    this.child = spawn(program, ["serve", this.binder, "--port", String(port)], { stdio: ["ignore", "pipe", "pipe"] });
    let said = "";
    this.url = await new Promise((resolve, reject) => {
      const take = (bytes) => {
        said += bytes;
        const found = /Witnessmark is at (http:\S+?)\/?\s/.exec(said);
        if (found) resolve(found[1]);
      };
      this.child.stdout.on("data", take);
      this.child.stderr.on("data", take);
      this.child.once("exit", (code) => reject(new Error(`the server ended with ${code}: ${said}`)));
    });
    this.port = Number(new URL(this.url).port);
    return this.url;
  }

  /// As a power cut would: no goodbye.
  async kill(signal = "SIGKILL") {
    const gone = new Promise((resolve) => this.child.once("exit", resolve));
    this.child.kill(signal);
    await gone;
  }

  async end() {
    if (this.child && this.child.exitCode === null && this.child.signalCode === null) await this.kill("SIGTERM");
    rmSync(this.folder, { recursive: true, force: true });
  }
}
