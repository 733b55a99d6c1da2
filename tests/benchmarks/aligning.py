"""Laying one photo over another: how long beside bare OpenCV, how true, and how often wrong.

    python -m tests.benchmarks.aligning [--unrelated 250]

The photos are those of the scikit-image wheel and, where there are any, of ../shared/corpus.
Warps of known truth are seen from elsewhere by up to 8 % of each side, in another light, with
noise, as JPEG; the changed ones have so much of their surface painted over. Two photos of the
corpus may show one and the same thing: what is laid among "unrelated" ones is named, to be looked
at.
"""

import argparse
import math
import random
import sys
import time
from itertools import combinations
from pathlib import Path

import cv2
import numpy as np
import skimage.data
from PIL import Image, ImageOps

from journal.domain.homographies import mapped
from journal.vision.aligning import FEWEST, SIDE, features, grey_of, lay

_NAMES = (
    "astronaut.png", "chelsea.png", "coffee.png", "motorcycle_left.png", "rocket.jpg",
    "brick.png", "grass.png", "gravel.png", "camera.png", "page.png", "coins.png", "moon.png",
    "retina.jpg", "hubble_deep_field.jpg", "ihc.png", "text.png", "color.png",
)  # fmt: skip
_GOOD = 5.0
_CORPUS = Path(__file__).resolve().parents[2].parent / "shared" / "corpus" / "photos"


def _say(words: str) -> None:
    sys.stdout.write(f"{words}\n")
    sys.stdout.flush()


def _load(path: Path):
    with Image.open(path) as image:
        made = ImageOps.exif_transpose(image).convert("RGB")
        made.thumbnail((2400, 2400))
        return np.asarray(made)


def _pictures(most: int) -> list[tuple[str, np.ndarray]]:
    folder = Path(skimage.data.__file__).parent
    paths = [folder / name for name in _NAMES]
    if _CORPUS.is_dir():
        # The sets of one scene in eight orientations are no unrelated photos.
        paths += [p for p in sorted(_CORPUS.rglob("*.jp*g")) if "Landscape" not in p.name
                  and "Portrait" not in p.name]  # fmt: skip
    found = []
    for path in paths[:most]:
        try:
            found.append((path.name, _load(path)))
        except (OSError, ValueError):
            continue
    return found


def _warped(picture, seed: int, changed: float):
    chance = np.random.default_rng(seed)
    high, wide = picture.shape[:2]
    corners = np.float32([[0, 0], [wide, 0], [wide, high], [0, high]])
    moved = corners + chance.uniform(-0.08, 0.08, (4, 2)) * [wide, high]
    matrix = cv2.getPerspectiveTransform(corners, moved.astype(np.float32))
    base = picture.copy()
    while changed and (base != picture).any(axis=2).mean() < changed:
        x, y = int(chance.integers(0, wide)), int(chance.integers(0, high))
        size = (
            int(chance.integers(wide // 16, wide // 4)),
            int(chance.integers(high // 16, high // 4)),
        )
        colour = tuple(int(part) for part in chance.integers(0, 256, 3))
        cv2.rectangle(base, (x, y), (x + size[0], y + size[1]), colour, -1)
    drawn = cv2.warpPerspective(base, matrix, (wide, high))
    lit = cv2.convertScaleAbs(drawn, alpha=float(chance.uniform(0.7, 1.2)), beta=20)
    noisy = np.clip(lit + chance.normal(0, 4, lit.shape), 0, 255).astype(np.uint8)
    coded = cv2.imencode(".jpg", noisy, [cv2.IMWRITE_JPEG_QUALITY, 85])[1]
    return cv2.imdecode(coded, cv2.IMREAD_COLOR), matrix


def _error(laid, matrix, shape) -> float:
    high, wide = shape[:2]
    scale = max(high, wide) / min(SIDE, max(high, wide))
    corners = ((0, 0), (wide, 0), (wide, high), (0, high))
    places = [mapped(laid.matrix, mapped(tuple(matrix.ravel()), corner)) for corner in corners]
    return max(map(math.dist, places, corners)) / scale


def _truth(pictures) -> None:
    chosen = pictures[:5]
    for changed in (0.0, 0.4, 0.6):
        errors = []
        for number, (_, picture) in enumerate(chosen):
            known = features(picture)
            for seed in range(3):
                moved, matrix = _warped(picture, 10 * number + seed, changed)
                laid = lay(known, features(moved))
                errors.append(None if laid is None else _error(laid, matrix, picture.shape))
        good = sum(error is not None and error < _GOOD for error in errors)
        wrong = [round(error, 1) for error in errors if error is not None and error >= _GOOD]
        words = (
            f"{good} of {len(errors)} within {_GOOD:g} px, {errors.count(None)} told as not found"
        )
        _say(f"warps, {changed:.0%} changed: {words}; laid wrongly: {wrong or 'none'}")


def _bare(one, other) -> None:
    """What OpenCV alone needs: features, matches from both sides, a robust homography."""
    sift = cv2.SIFT.create(nfeatures=4000)
    found = [sift.detectAndCompute(grey_of(picture)[0], None) for picture in (one, other)]
    matcher = cv2.BFMatcher(cv2.NORM_L2)
    (points, numbers), (points_2, numbers_2) = found
    matches = [
        m for m, n in matcher.knnMatch(numbers, numbers_2, k=2) if m.distance < 0.85 * n.distance
    ]
    matcher.knnMatch(numbers_2, numbers, k=2)
    source = np.float32([points_2[m.trainIdx].pt for m in matches])
    target = np.float32([points[m.queryIdx].pt for m in matches])
    cv2.findHomography(source, target, cv2.USAC_MAGSAC, 3.0, maxIters=10_000, confidence=0.999)


def _speed(pictures) -> None:
    _, picture = max(pictures[:5], key=lambda row: row[1].size)
    scale = SIDE / max(picture.shape)
    large = cv2.resize(picture, None, fx=scale, fy=scale, interpolation=cv2.INTER_CUBIC)
    moved, _ = _warped(large, 1, 0.3)
    ours, bare = [], []
    for _ in range(5):
        start = time.perf_counter()
        lay(features(large), features(moved))
        ours.append(time.perf_counter() - start)
        start = time.perf_counter()
        _bare(large, moved)
        bare.append(time.perf_counter() - start)
    ratio = min(ours) / min(bare)
    _say(f"one pair at {SIDE} px: {min(ours):.2f} s; bare OpenCV {min(bare):.2f} s; {ratio:.2f} x")


def _unrelated(pictures, count: int) -> None:
    known = [(name, features(picture)) for name, picture in pictures]
    pairs = list(combinations(known, 2))
    random.Random(1).shuffle(pairs)
    laid = []
    for (name, one), (name_2, other) in pairs[:count]:
        found = lay(one, other)
        if found is not None:
            laid.append(f"{name} and {name_2} ({found.inliers} of {found.matches})")
    _say(f"unrelated: {len(pairs[:count])} pairs, laid {len(laid)} (least inliers {FEWEST})")
    for words in laid:
        _say(words)


def main() -> None:
    """Measure."""
    parser = argparse.ArgumentParser()
    parser.add_argument("--unrelated", type=int, default=250)
    parser.add_argument("--photos", type=int, default=60)
    given = parser.parse_args()
    pictures = _pictures(given.photos)
    _say(f"{len(pictures)} photos")
    _speed(pictures)
    _truth(pictures)
    _unrelated(pictures, given.unrelated)


if __name__ == "__main__":
    main()
