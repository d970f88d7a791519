using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Units;
using PlankFit.Reading.Lengths;

namespace PlankFit.Reading.AsBuilt;

/// <summary>What is wrong with a row, and in which of its cells, from 1.</summary>
internal readonly record struct TapeFault(int Column, string Message);

/// <summary>Rows of measured.csv that the hull is adjusted to: points of lines at stations, edges of planks, and what was read there.</summary>
/// <param name="units">What the file is written in, and what lengths are shown in.</param>
internal sealed class TapeRows(
    OffsetTable table,
    Panel bottom,
    (LengthUnit Written, LengthUnit Shown) units
)
{
    /// <summary>No frame stands so far from the drawing: a part of what is drawn, and no less than so many mm. Our own bound, no source.</summary>
    private const double Part = 0.3;
    private const double LeastMm = 60;

    /// <summary>No plank is offered up that lacks more, mm: our own bound, no source.</summary>
    private const double MostShortMm = 60;

    /// <summary>The kinds by what measured.csv calls them.</summary>
    public static readonly ImmutableArray<string> Words =
    [
        .. Enum.GetValues<TapeKind>().Select(TapePlace.WordOf),
    ];

    public static TapeKind? KindOf(string what) =>
        Words.IndexOf(what) is >= 0 and var i ? Enum.GetValues<TapeKind>()[i] : null;

    public TapeReading Girth(string station, Side side, double mm) =>
        new(
            new(
                TapeKind.Girth,
                side,
                [new(bottom.Lower, station), new(bottom.Upper, station)],
                null
            ),
            mm
        );

    /// <param name="cells">What, where, side, value.</param>
    public (TapeReading? Reading, TapeFault? Fault) Read(
        TapeKind kind,
        ImmutableArray<string> cells,
        int plankLayers
    )
    {
        (TapePlace? place, TapeFault? fault) = Place(kind, cells[1], cells[2], plankLayers);
        if (place is null)
        {
            return (null, fault);
        }

        LengthReading length = LengthNotation.Read(cells[3], units.Written);
        if (length.Fault is { } unread)
        {
            return (null, new(4, $"{unread}; {LengthNotation.AcceptedInList(units.Written)}"));
        }

        return Beyond(place, length.Mm) is { } beyond
            ? (null, new(4, beyond))
            : (new(place, length.Mm), null);
    }

    private (TapePlace?, TapeFault?) Place(
        TapeKind kind,
        string where,
        string sideWord,
        int plankLayers
    )
    {
        if (kind is TapeKind.SeamLength or TapeKind.ShortAtChine or TapeKind.OpensAtKeel)
        {
            return OfPlank(kind, where, sideWord, plankLayers);
        }

        Side? side = SideOf(sideWord);
        bool both = kind is TapeKind.Across || (kind is TapeKind.Height && sideWord.Length == 0);
        if (both ? sideWord.Length > 0 : side is null)
        {
            return (
                null,
                new(
                    3,
                    kind is TapeKind.Across
                        ? "it is from starboard to port: leave the cell empty"
                        : "accepted: starboard or port"
                )
            );
        }

        (ImmutableArray<TapedPoint> points, string? fault) = Points(kind, where);
        return fault is null
            ? (new(kind, both ? null : side, points, null), null)
            : (null, new(2, fault));
    }

    private (ImmutableArray<TapedPoint> Points, string? Fault) Points(TapeKind kind, string where)
    {
        if (kind is TapeKind.AlongKeel or TapeKind.AlongChine)
        {
            string line = kind is TapeKind.AlongKeel ? bottom.Lower : bottom.Upper;
            return Split(where, IsStation, IsStation) is var (a, b)
                ? a == b
                    ? ([], "the two stations are one")
                    : Known([new(line, a), new(line, b)])
                : (
                    [],
                    $"give two stations of the table with a blank between, {Example()}; it has {Stations}"
                );
        }

        if (kind is TapeKind.Diagonal)
        {
            return
                Split(where, w => PointOf(w) is not null, w => PointOf(w) is not null) is var (a, b)
                ? Known([PointOf(a)!.Value, PointOf(b)!.Value])
                : (
                    [],
                    $"give two points with a blank between, each a line and a station with a stroke between: {bottom.Lower}/{table.Stations[0].Name} {bottom.Upper}/{table.Stations[^1].Name}; lines are {string.Join(", ", bottom.Lines)}, stations {Stations}"
                );
        }

        return PointOf(where) is { } point
            ? Known([point])
            : (
                [],
                $"give a line and a station with a stroke between, {bottom.Upper}/{table.Stations[^1].Name}; lines are {string.Join(", ", bottom.Lines)}, stations {Stations}"
            );
    }

    private string Example() =>
        table.Stations.Length > 1
            ? $"{table.Stations[0].Name} {table.Stations[1].Name}"
            : table.Stations[0].Name;

    private string Stations => string.Join(", ", table.Stations.Select(s => s.Name));

    private (ImmutableArray<TapedPoint>, string?) Known(ImmutableArray<TapedPoint> points)
    {
        ImmutableArray<int> run = HullLoft.Stations(table, bottom);
        foreach (TapedPoint p in points)
        {
            if (table.Find(p.Line) is not { } line || !line.Has(IndexOf(p.Station)))
            {
                return ([], $"the table has no point of {p.Line} at station {p.Station}");
            }

            if (!run.Contains(IndexOf(p.Station)))
            {
                return (
                    [],
                    $"the bottom does not reach station {p.Station}: it runs where {bottom.Lower} and {bottom.Upper} both are"
                );
            }
        }

        return (points, null);
    }

    private (TapePlace?, TapeFault?) OfPlank(
        TapeKind kind,
        string where,
        string sideWord,
        int plankLayers
    )
    {
        if (EdgeOf(where, kind is not TapeKind.ShortAtChine) is not { Plank: var plank } edge)
        {
            return (
                null,
                new(
                    2,
                    kind switch
                    {
                        TapeKind.SeamLength => "give a plank and which of its edges: S1-10 after",
                        TapeKind.OpensAtKeel =>
                            "give a plank and which corner of its end: S1-20 forward",
                        _ => $"is not a plank's number: {PlankIds.Accepted}",
                    }
                )
            );
        }

        if (plank.Panel != PlankId.Bottom)
        {
            return (null, new(2, "is no plank of the bottom: only the bottom is adjusted"));
        }

        if (plank.Layer > plankLayers)
        {
            return (
                null,
                new(2, $"the job has {NumberText.Count(plankLayers, "layer")} of planks")
            );
        }

        if (sideWord.Length > 0 && SideOf(sideWord) != plank.Side)
        {
            return (
                null,
                new(
                    3,
                    $"{plank} is to {(plank.Side == Side.Starboard ? "starboard" : "port")}: one of the two is wrong"
                )
            );
        }

        return (new(kind, plank.Side, [], edge), null);
    }

    /// <summary>A plank, and which of its edges where one is asked for; else the forward one.</summary>
    private static TapedEdge? EdgeOf(string where, bool edged)
    {
        string[] words = where.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        return
            words.Length == (edged ? 2 : 1)
            && PlankId.Parse(words[0]) is { } plank
            && (!edged || words[1] is "after" or "forward")
            ? new(plank, edged && words[1] == "after")
            : null;
    }

    /// <summary>What no tape reads on this hull, by the table as drawn; null where it may.</summary>
    private string? Beyond(TapePlace place, double mm)
    {
        if (place.IsOfAPlankOfferedUp)
        {
            return Math.Abs(mm) <= MostShortMm
                ? null
                : $"a plank that is out by more than {Text(MostShortMm)} is another plank's: look at its number, and write what the tape says";
        }

        if (place.Kind is TapeKind.SeamLength)
        {
            return mm > 0 ? null : "must be greater than 0";
        }

        double? drawn = place.Kind switch
        {
            TapeKind.HalfBreadth => Point(place.Points[0])?.B,
            TapeKind.Height => Point(place.Points[0])?.H,
            TapeKind.Across => 2 * Point(place.Points[0])?.B,
            _ => Apart(Point(place.Points[0]), Point(place.Points[1])),
        };
        return drawn is not { } d || Math.Abs(mm - d) <= Math.Max(LeastMm, Part * Math.Abs(d))
            ? null
            : $"the table has about {Text(d)} there: nothing is adjusted to this; read the tape again and write what it says";
    }

    private string Text(double mm) => LengthText.ForPaper(mm, units.Shown);

    private (double X, double B, double H)? Point(TapedPoint p)
    {
        OffsetLine line = table.Named(p.Line);
        int i = IndexOf(p.Station);
        return line.Has(i)
            ? (
                table.Stations[i].PositionMm,
                line.HalfBreadthsMm[i]!.Value,
                line.HeightsMm[i]!.Value
            )
            : null;
    }

    private static double? Apart(
        (double X, double B, double H)? a,
        (double X, double B, double H)? b
    ) =>
        a is var (ax, ab, ah) && b is var (bx, bb, bh)
            ? Math.Sqrt(((ax - bx) * (ax - bx)) + ((ab - bb) * (ab - bb)) + ((ah - bh) * (ah - bh)))
            : null;

    private bool IsStation(string word) => table.Stations.Any(s => s.Name == word);

    private int IndexOf(string station) =>
        Enumerable.Range(0, table.Stations.Length).First(i => table.Stations[i].Name == station);

    /// <summary>A line of the bottom and a station: both may have strokes and blanks of their own.</summary>
    private TapedPoint? PointOf(string where)
    {
        for (int at = where.IndexOf('/'); at >= 0; at = where.IndexOf('/', at + 1))
        {
            string line = where[..at].Trim(),
                station = where[(at + 1)..].Trim();
            if (bottom.Lines.Contains(line) && IsStation(station))
            {
                return new(line, station);
            }
        }

        return null;
    }

    /// <summary>A text in two at the first blank that leaves two names.</summary>
    private static (string, string)? Split(
        string where,
        Func<string, bool> first,
        Func<string, bool> second
    )
    {
        for (int at = where.IndexOf(' '); at >= 0; at = where.IndexOf(' ', at + 1))
        {
            string a = where[..at].Trim(),
                b = where[(at + 1)..].Trim();
            if (first(a) && second(b))
            {
                return (a, b);
            }
        }

        return null;
    }

    private static Side? SideOf(string word) =>
        word.ToLowerInvariant() switch
        {
            "starboard" => Side.Starboard,
            "port" => Side.Port,
            _ => null,
        };
}
