//! Names of points in a table: `front.tie_rod.inner`, `rear.right.wheel.centre`.

use trammel_build::{AxleName, PointName, PointRef, Side};

use crate::nearest::nearest;

/// The full name of a point.
pub(super) fn name(at: PointRef) -> String {
    let side = match at.side {
        Side::Left => "",
        Side::Right => "right.",
    };
    format!("{}.{side}{}", at.axle.word(), at.point)
}

/// The point of a name. Without an axle it is the front one, without a side the left one. The error is the known name that is most like it.
pub(super) fn point(name: &str) -> Result<PointRef, Option<String>> {
    let (axle, rest) = [AxleName::Front, AxleName::Rear]
        .into_iter()
        .find_map(|axle| Some((axle, strip(name, axle.word())?)))
        .unwrap_or((AxleName::Front, name));
    let (side, rest) = [Side::Left, Side::Right]
        .into_iter()
        .find_map(|side| Some((side, strip(rest, side.word())?)))
        .unwrap_or((Side::Left, rest));
    let at = |point| PointRef { axle, side, point };
    PointName::from_path(rest).map(at).ok_or_else(|| {
        let known = nearest(rest, PointName::ALL.map(PointName::path));
        known
            .and_then(PointName::from_path)
            .map(|p| self::name(at(p)))
    })
}

fn strip<'a>(name: &'a str, word: &str) -> Option<&'a str> {
    name.strip_prefix(word)?.strip_prefix('.')
}
