"""The steps of PhotoBenchmark through OpenCV's Python binding, on the same file, two threads.

Usage: python3 photo_opencv.py photo-12mp.jpg. Decode, Lab of every pixel (8 bit and float), ground
by Otsu on the distance from the border's median at a ninth of the size, contours, mean and standard
deviation inside six outlines at full size. No chart search and no calibration: the part of OpenCV
that finds charts is not in every build, so OpenCV does less here than the program does.
"""
import statistics
import sys
import time

import cv2
import numpy as np


def median(what, work, runs=7, warm=3):
    wall, processor = [], []
    out = None
    for i in range(runs + warm):
        w, p = time.perf_counter(), time.process_time()
        out = work()
        if i >= warm:
            wall.append(1e3 * (time.perf_counter() - w))
            processor.append(1e3 * (time.process_time() - p))
    print(f"{what:34} {statistics.median(wall):6.0f} ms, processor {statistics.median(processor):6.0f} ms")
    return out


def pieces(picture):
    small = cv2.resize(picture, None, fx=1 / 9, fy=1 / 9, interpolation=cv2.INTER_AREA)
    lab = cv2.cvtColor(small, cv2.COLOR_BGR2LAB).astype(np.float32)
    border = np.concatenate([lab[:4].reshape(-1, 3), lab[-4:].reshape(-1, 3)])
    away = np.linalg.norm(lab - np.median(border, axis=0), axis=2)
    scaled = cv2.normalize(away, None, 0, 255, cv2.NORM_MINMAX).astype(np.uint8)
    _, mask = cv2.threshold(scaled, 0, 255, cv2.THRESH_BINARY | cv2.THRESH_OTSU)
    mask = cv2.morphologyEx(mask, cv2.MORPH_OPEN, np.ones((5, 5), np.uint8))
    found, _ = cv2.findContours(mask, cv2.RETR_EXTERNAL, cv2.CHAIN_APPROX_NONE)
    return sorted(found, key=cv2.contourArea, reverse=True)[:6]


def measured(picture, outlines, floating):
    source = picture.astype(np.float32) / 255 if floating else picture
    lab = cv2.cvtColor(source, cv2.COLOR_BGR2LAB)
    out = []
    for outline in outlines:
        x, y, w, h = (9 * v for v in cv2.boundingRect(outline))
        mask = np.zeros((h, w), np.uint8)
        cv2.drawContours(mask, [outline * 9 - (x, y)], -1, 255, -1)
        out.append(cv2.meanStdDev(lab[y : y + h, x : x + w], mask=mask[: lab.shape[0] - y]))
    return out


def main():
    cv2.setNumThreads(2)
    data = np.fromfile(sys.argv[1], np.uint8)
    picture = median("decode (OpenCV)", lambda: cv2.imdecode(data, cv2.IMREAD_COLOR))
    outlines = median("find the pieces (OpenCV)", lambda: pieces(picture))
    print(len(outlines), "outlines")
    median("Lab, means, 8 bit (OpenCV)", lambda: measured(picture, outlines, False))
    median("Lab, means, float (OpenCV)", lambda: measured(picture, outlines, True))

    def everything(floating):
        read = cv2.imdecode(data, cv2.IMREAD_COLOR)
        return measured(read, pieces(read), floating)

    median("all from bytes, 8 bit (OpenCV)", lambda: everything(False))
    median("all from bytes, float (OpenCV)", lambda: everything(True))


if __name__ == "__main__":
    main()
