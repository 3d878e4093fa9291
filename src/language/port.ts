/** How the language gets at base, kit, room and photometric files. `files/` implements it; tests give a map. */
export interface FilePort {
  /**
   * Reads a file named in `from`, relative to it. Refuses what lies outside the root (links followed), what is not a
   * plain file, what is over 1 MiB; says so in one sentence that can stand in a finding.
   */
  read(
    path: string,
    from: string,
  ):
    | { readonly ok: true; readonly file: string; readonly text: string }
    | { readonly ok: false; readonly says: string }
}
