using PlankFit.Reading.Keys;

namespace PlankFit.Reading.AsBuilt;

/// <summary>[as-built]: the hull as it stands, what was measured, fitted and sawn.</summary>
public static class AsBuiltKeys
{
    public static readonly TextKey Measured = new(
        "measured",
        "\"measured.csv\"",
        "The file of what the tape says on the hull: half-widths of the keel, girths, seams."
    );

    public static readonly TextKey From = new(
        "from",
        "\"0\"",
        "The station from which seams are measured."
    )
    {
        Otherwise = "the first of the bottom",
    };

    public static readonly TextsKey Fitted = new(
        "fitted",
        "[\"S1-08..S1-12\"]",
        "Planks that are on the hull, where not every seam of theirs is measured: names, and runs of them."
    );

    public static readonly TextKey Sawn = new(
        "sawn",
        "\"sawn-planks.json\"",
        "The record of planks that are sawn, which `plankfit sawn` writes; no lay-out moves or reshapes them."
    );

    public static readonly TextsKey AsMeasured = new(
        "as-measured",
        "[\"chine/half-breadth/2\"]",
        "Cells of the table that may move as far as the readings have them, though that is more than [trust] or a frame a little out explains: line, measure and station."
    );

    public static readonly JobTable Table = new(Measured, From, Fitted, Sawn, AsMeasured);
}
