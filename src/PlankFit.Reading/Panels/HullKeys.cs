using PlankFit.Planking.Hulls;
using PlankFit.Reading.Keys;

namespace PlankFit.Reading.Panels;

/// <summary>[hull]: the table of offsets and its lines.</summary>
public static class HullKeys
{
    public static readonly TextKey Offsets = new(
        "offsets",
        "\"offsets.csv\"",
        "The file with the table of offsets, beside the job."
    )
    {
        AskedFor = "the table's file, such as \"offsets.csv\"",
    };

    public static readonly ChoiceKey<bool> PositionsForward = new(
        "positions",
        [("aft", false), ("forward", true)],
        "Which way positions grow along the hull, in the table and in this file."
    )
    {
        DefaultChoice = false,
    };

    public static readonly ChoiceKey<OffsetsAreTo> OffsetsTo = new(
        "offsets-are-to",
        [("outside", OffsetsAreTo.Outside), ("inside", OffsetsAreTo.Inside)],
        "The face that the table is drawn to: the outside of the whole stack of planking and cloth, or its inside."
    )
    {
        Required = true,
    };

    public static readonly ChoiceKey<KeelSide> Side = new(
        "keel-side",
        [("plumb", KeelSide.Plumb), ("square to plank", KeelSide.SquareToPlank)],
        "How the side of the keel stands that the planks' inner ends meet, where no [[keel-layer]] says it."
    )
    {
        DefaultChoice = KeelSide.Plumb,
    };

    public static readonly TextKey Keel = new(
        "keel",
        "\"keel edge\"",
        "The table's line that the planks' inner ends meet."
    )
    {
        AskedFor = "the name of the table's line that the planks' inner ends meet",
    };

    public static readonly TextKey Chine = new(
        "chine",
        "\"chine\"",
        "The table's line at the chine, the outer edge of the bottom."
    )
    {
        AskedFor = "the name of the table's line at the chine",
    };

    public static readonly TextsKey Between = new(
        "between",
        "[\"bilge diagonal\"]",
        "Lines of the table between the two, from keel to chine, where sections are not straight."
    )
    {
        Otherwise = "straight sections",
    };

    public static readonly TextsKey AsWritten = new(
        "as-written",
        "[\"chine/half-breadth/6\"]",
        "Cells of the table that are right though they stand out of the run of their neighbours: line/measure/station, or position/station. "
            + "Without it nothing is laid to a cell that stands out by more than 10 mm."
    )
    {
        Otherwise = "none",
    };

    public static readonly JobTable Table = new(
        Offsets,
        OffsetsTo,
        Keel,
        Chine,
        Between,
        Side,
        PositionsForward,
        AsWritten
    );
}
