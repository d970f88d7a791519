using System.Collections.Immutable;
using PlankFit.Planking.Findings;

namespace PlankFit.Planking.Jobs;

/// <summary>What a tape can read on a bare hull, and of a plank on it.</summary>
public enum TapeKind
{
    /// <summary>From the middle line, or a string along it, square out to a point of a line.</summary>
    HalfBreadth,

    /// <summary>From the base line of the table up to a point of a line.</summary>
    Height,

    /// <summary>Keel edge to chine along the surface at a station.</summary>
    Girth,

    /// <summary>Starboard to port, from a point of a line to its twin.</summary>
    Across,

    /// <summary>From point to point in space.</summary>
    Diagonal,

    /// <summary>Along the keel's edge between two stations.</summary>
    AlongKeel,

    /// <summary>Along the chine between two stations.</summary>
    AlongChine,

    /// <summary>Keel to chine along a seam, on the face that its layer lies on.</summary>
    SeamLength,

    /// <summary>What a plank that is offered up lacks at the chine.</summary>
    ShortAtChine,

    /// <summary>By which a plank that is offered up stands off the keel at one corner of its end.</summary>
    OpensAtKeel,
}

/// <summary>A point of a frame: where a line of the table crosses a station, on the face that the first layer is laid on.</summary>
public readonly record struct TapedPoint(string Line, string Station)
{
    public override string ToString() => $"{Line}/{Station}";
}

/// <summary>One of a plank's two long edges.</summary>
public readonly record struct TapedEdge(PlankId Plank, bool After)
{
    public override string ToString() => $"{Plank} {(After ? "after" : "forward")}";
}

/// <summary>Something that a tape reads on the hull: of what kind, where. Of the points or the edge one is there, as the kind has it.</summary>
/// <param name="Side">Null where it is of both: across the boat, and a height that both sides share.</param>
public sealed record TapePlace(
    TapeKind Kind,
    Side? Side,
    ImmutableArray<TapedPoint> Points,
    TapedEdge? Edge
)
{
    /// <summary>As measured.csv has it under "what".</summary>
    public string What => WordOf(Kind);

    /// <summary>As measured.csv has it under "where".</summary>
    public string Where =>
        Kind switch
        {
            TapeKind.Girth => Points[0].Station,
            TapeKind.AlongKeel or TapeKind.AlongChine => $"{Points[0].Station} {Points[1].Station}",
            TapeKind.ShortAtChine => Edge!.Value.Plank.ToString(),
            TapeKind.SeamLength or TapeKind.OpensAtKeel => Edge!.Value.ToString(),
            _ => string.Join(" ", Points),
        };

    /// <summary>It is of a plank that is offered up, and says nothing of the hull by itself.</summary>
    public bool IsOfAPlankOfferedUp => Kind is TapeKind.ShortAtChine or TapeKind.OpensAtKeel;

    public static string WordOf(TapeKind kind) =>
        kind switch
        {
            TapeKind.HalfBreadth => "half-breadth",
            TapeKind.Height => "height",
            TapeKind.Girth => "girth",
            TapeKind.Across => "across",
            TapeKind.Diagonal => "diagonal",
            TapeKind.AlongKeel => "along keel",
            TapeKind.AlongChine => "along chine",
            TapeKind.SeamLength => "seam length",
            TapeKind.ShortAtChine => "short at chine",
            _ => "opens at keel",
        };

    /// <summary>The same by value: the points are compared one by one.</summary>
    public bool Equals(TapePlace? other) =>
        other is not null
        && (Kind, Side, Edge) == (other.Kind, other.Side, other.Edge)
        && Points.AsSpan().SequenceEqual(other.Points.AsSpan());

    public override int GetHashCode() => HashCode.Combine(Kind, Side, Edge, Points.Length);
}

/// <summary>What the tape read there, mm.</summary>
public sealed record TapeReading(TapePlace Place, double Mm);
