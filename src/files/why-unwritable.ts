/** The system's reason in words that need no manual. Stands after a file's name. */
export const whyUnwritable = (error: unknown): string => {
  const code = (error as { code?: unknown } | undefined)?.code
  const reasons: Readonly<Record<string, string>> = {
    EEXIST: 'there is one already, and nothing is overwritten',
    ENOENT: 'no such file',
    EACCES: 'permission denied',
    EPERM: 'permission denied',
    EROFS: 'the disk is read-only',
    EIO: 'the device failed',
    ENOSPC: 'the disk is full',
    EDQUOT: 'the disk is full',
    ENOTDIR: 'a part of its path is a file',
  }
  return `cannot be written: ${(typeof code === 'string' && reasons[code]) || String(error)}`
}
