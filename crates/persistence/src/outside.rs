//! Files as other programs and the system leave them: what stands under a name, and what the system says in words for a shop.

use std::{
    fs::{self, File, FileType},
    io::{self, Read},
    path::Path,
};

/// What stands under a name where a file is expected; nothing when it is a file. A pipe or a device is told before it is opened, since opening one may
/// wait for ever.
pub(crate) fn not_a_file(kind: FileType) -> Option<&'static str> {
    #[cfg(unix)]
    {
        use std::os::unix::fs::FileTypeExt;
        if kind.is_fifo() {
            return Some("a pipe");
        }
        if kind.is_socket() {
            return Some("a socket");
        }
        if kind.is_char_device() || kind.is_block_device() {
            return Some("a device");
        }
    }
    match (kind.is_file(), kind.is_dir()) {
        (true, _) => None,
        (_, true) => Some("a folder"),
        _ => Some("no file"),
    }
}

/// The text of a small file that this program keeps for itself; an error for what is no file, larger than it ever gets, or no text.
pub(crate) fn kept_text(path: &Path, largest: u64) -> io::Result<String> {
    if let Some(found) = not_a_file(fs::metadata(path)?.file_type()) {
        return Err(io::Error::other(format!("it is {found}, expected a file")));
    }
    let mut text = String::new();
    // One byte more than allowed tells a file that is too large, also one that grows meanwhile.
    File::open(path)?
        .take(largest + 1)
        .read_to_string(&mut text)?;
    if text.len() as u64 > largest {
        return Err(io::ErrorKind::FileTooLarge.into());
    }
    Ok(text)
}

/// What the system says, in plain words where there are better ones than its own.
#[must_use]
pub fn in_plain_words(fault: &io::Error) -> String {
    use io::ErrorKind as Kind;
    let plain = match fault.kind() {
        Kind::StorageFull => "the disk is full",
        Kind::QuotaExceeded => "your share of the disk is used up",
        Kind::FileTooLarge => "the file is larger than is allowed here",
        Kind::ReadOnlyFilesystem => "this disk can only be read",
        Kind::PermissionDenied => "you have no permission for it",
        Kind::NotFound => "there is no such file or folder",
        Kind::NotADirectory => "a part of the path is not a folder",
        Kind::InvalidFilename => "the name is too long or has signs that are not allowed",
        _ => return fault.to_string(),
    };
    plain.to_owned()
}

#[cfg(test)]
mod tests {
    use std::{fs, io};

    use super::{in_plain_words, kept_text};

    #[test]
    fn a_kept_text_may_be_just_as_long_as_it_ever_gets() -> io::Result<()> {
        let folder = tempfile::tempdir()?;
        let path = folder.path().join("kept.ron");
        fs::write(&path, "0123456789")?;
        assert_eq!(kept_text(&path, 10)?, "0123456789");
        let longer = kept_text(&path, 9).map_err(|fault| fault.kind());
        assert_eq!(longer, Err(io::ErrorKind::FileTooLarge));
        Ok(())
    }

    #[test]
    fn what_the_system_says_most_is_said_without_its_own_words() {
        use io::ErrorKind as Kind;
        for (kind, word) in [
            (Kind::StorageFull, "full"),
            (Kind::QuotaExceeded, "your share"),
            (Kind::FileTooLarge, "larger"),
            (Kind::ReadOnlyFilesystem, "only be read"),
            (Kind::PermissionDenied, "no permission"),
            (Kind::NotFound, "no such"),
            (Kind::NotADirectory, "not a folder"),
            (Kind::InvalidFilename, "name"),
        ] {
            let fault = io::Error::from(kind);
            let said = in_plain_words(&fault);
            assert!(said.contains(word) && said != fault.to_string(), "{said}");
        }
    }
}
