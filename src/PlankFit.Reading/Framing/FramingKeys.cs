using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Framing;
using PlankFit.Reading.Keys;

namespace PlankFit.Reading.Framing;

/// <summary>[[behind]]: what lies behind the planks.</summary>
public static class FramingKeys
{
    public static readonly TextKey Name = new(
        "name",
        "\"stringer A\"",
        "What the thing is called, on patterns and lists; each thing's own."
    )
    {
        AskedFor = "the name that stands on patterns and lists",
    };

    public static readonly ChoiceKey<FramingKind> Kind = new(
        "kind",
        [
            ("stringer", FramingKind.Stringer),
            ("frame", FramingKind.Frame),
            ("floor", FramingKind.Floor),
            ("solid", FramingKind.Solid),
            ("open", FramingKind.Open),
        ],
        "What it is: timber to fasten to, a place to keep solid, or a place to keep open."
    )
    {
        Required = true,
    };

    public static readonly ChoiceKey<ImmutableArray<Side>> Sides = new(
        "side",
        [
            ("both", [Side.Starboard, Side.Port]),
            ("starboard", [Side.Starboard]),
            ("port", [Side.Port]),
        ],
        "The side of the boat that has it."
    )
    {
        Otherwise = "\"both\"",
    };

    public static readonly LengthKey Width = new(
        "width",
        "45",
        "Its width square to its centre line on the inner face of the stack, half on each side."
    )
    {
        Required = true,
        Limits = Limits.Positive,
        Likely = Likely.OfUnit(null, 1000, "is unlikely wide for a thing behind the planks"),
        Source = KeySources.Plausible,
    };

    public static readonly LengthKey Length = new(
        "length",
        "80",
        "Of a place in the bottom: its length along the hull, half ahead of its position and half abaft."
    )
    {
        Limits = Limits.Positive,
        Otherwise = "it runs on",
    };

    public static readonly TextKey Line = new(
        "line",
        "\"bilge diagonal\"",
        "Its centre runs along this line of the table."
    );

    public static readonly TextKey Station = new(
        "station",
        "\"8\"",
        "Its centre lies in the plane of this station."
    );

    public static readonly LengthKey FromKeel = Distance(
        "from-keel",
        "300",
        "Its centre runs so far from the keel's side, taped on the frames."
    );

    public static readonly LengthKey FromChine = Distance(
        "from-chine",
        "120",
        "Its centre runs so far from the chine, taped on the frames."
    );

    public static readonly LengthKey Position = new(
        "position",
        "2400",
        "Its centre lies in the plane across the hull at this position."
    );

    public static readonly LengthKey From = new(
        "from",
        "1000",
        "Of a thing along the hull: the position at which it begins."
    )
    {
        Otherwise = "the forward end",
    };

    public static readonly LengthKey To = new(
        "to",
        "6000",
        "Of a thing along the hull: the position at which it ends."
    )
    {
        Otherwise = "the after end",
    };

    public static readonly LengthKey OutFrom = Distance(
        "out-from",
        "50",
        "Of a thing across the hull: how far from the keel's side it begins."
    ) with
    {
        Otherwise = "the keel",
    };

    public static readonly LengthKey OutTo = Distance(
        "out-to",
        "600",
        "Of a thing across the hull: how far from the keel's side it ends."
    ) with
    {
        Otherwise = "the chine",
    };

    /// <summary>Any one of them says where the centre runs; a place in the bottom has two.</summary>
    public static readonly ImmutableArray<JobKey> Places =
    [
        Line,
        FromKeel,
        FromChine,
        Position,
        Station,
    ];

    public static readonly JobTable Table = new([
        Name,
        Kind,
        .. Places,
        Width,
        Length,
        From,
        To,
        OutFrom,
        OutTo,
        Sides,
    ]);

    private static LengthKey Distance(string name, string example, string what) =>
        new(name, example, what)
        {
            Limits = Limits.NotNegative,
            Beyond = "must be {least} or more",
        };
}
