"""What Lighthouse told of three visits is judged by their median; what it could not tell fails."""

from typing import Any

from build import audit


def report(
    performance: float = 0.97, largest: float = 912.4, access: float = 1, page: int = 13_900
) -> dict[str, Any]:
    """A report as Lighthouse writes it, as far as it is read."""
    part = {"id": "label", "weight": 7}
    none = {"id": "video-caption", "weight": 10}
    return {
        "categories": {
            "performance": {"score": performance},
            "accessibility": {"score": access, "auditRefs": [part, none]},
            "best-practices": {"score": 1, "auditRefs": []},
        },
        "audits": {
            "first-contentful-paint": {"numericValue": 780.0},
            "largest-contentful-paint": {"numericValue": largest},
            "total-blocking-time": {"numericValue": 120.0},
            "cumulative-layout-shift": {"numericValue": 0.0004},
            "network-requests": {"details": {"items": [{"transferSize": page}]}},
            "label": {
                "title": "Form elements have labels",
                "score": access,
                "scoreDisplayMode": "binary",
            },
            "video-caption": {
                "title": "Videos have captions",
                "score": None,
                "scoreDisplayMode": "notApplicable",
            },
        },
    }


def test_the_middle_of_three_is_judged() -> None:
    lines, faults = audit.judge([report(0.95), report(0.99), report(0.6, largest=2300)])
    assert faults == []
    performance, largest = lines[0], lines[4]
    assert " ".join(performance.split()) == "performance 95 (95, 99, 60) at least 95"
    assert "912  (912, 912, 2300)  at most 1000" in largest


def test_each_broken_promise_is_told() -> None:
    assert audit.judge([report(0.94)] * 3)[1] == ["performance: 94, promised is at least 95"]
    assert audit.judge([report(largest=1010)] * 3)[1] == [
        "largest paint (LCP), ms: 1010, promised is at most 1000"
    ]
    assert audit.judge([report(access=0.99)])[1] == ["accessibility: 99, promised is at least 100"]
    assert audit.judge([report(page=14_601)])[1] == [
        "page and its headers, bytes: 14601, promised is at most 14600"
    ]


def test_what_could_not_be_told_is_no_pass() -> None:
    untold = report()
    untold["categories"]["performance"]["score"] = None
    untold["audits"]["network-requests"]["details"]["items"] = []
    del untold["audits"]["largest-contentful-paint"]["numericValue"]
    faults = audit.judge([report(), report(), untold])[1]
    assert [fault.split(":")[0] for fault in faults] == [
        "performance",
        "largest paint (LCP), ms",
        "page and its headers, bytes",
    ]
    assert len(audit.judge([])[1]) == len(audit.FIGURES)


def test_what_is_wrong_is_named() -> None:
    assert audit.complaints(report()) == []
    assert audit.complaints(report(access=0.9)) == ["Form elements have labels"]
