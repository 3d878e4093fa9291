/** How the language gets at base, kit, room and photometric files. `files/` implements it; tests give a map. */
export interface FilePort {
  /**
   * Reads a file named in `from`, relative to it. Refuses what lies outside the root (links followed), what is not a
   * plain file, what is over 1 MiB; says so in one sentence that can stand in a finding.
   *
   * @param kind photometric files hold words in whatever letters their maker's system had: what is not UTF-8 is Latin-1.
   *   Of all others, what is not UTF-8 is refused
   */
  read(
    path: string,
    from: string,
    kind?: 'photometric',
  ):
    | { readonly ok: true; readonly file: string; readonly text: string }
    | { readonly ok: false; readonly says: string }
}
