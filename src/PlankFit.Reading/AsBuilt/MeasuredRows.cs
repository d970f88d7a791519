using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Units;
using PlankFit.Reading.Lengths;
using PlankFit.Reading.Text;

namespace PlankFit.Reading.AsBuilt;

/// <summary>Rows of measured.csv, one after the other, to what was measured.</summary>
internal sealed class MeasuredRows(
    string file,
    LengthUnit units,
    OffsetTable table,
    ImmutableArray<string> keelLayers,
    int plankLayers,
    List<Finding> findings
)
{
    private const string HalfWidth = "keel half-width";
    private const string Girth = "girth";
    private const string SeamAtKeel = "seam at keel";
    private const string SeamAtChine = "seam at chine";

    private static readonly string[] Kinds = [HalfWidth, Girth, SeamAtKeel, SeamAtChine];

    /// <summary>What a tape can read on this hull at all.</summary>
    public required MeasuredBounds Tape { get; init; }

    /// <summary>What the job shows lengths in.</summary>
    public required LengthUnit Shown { get; init; }

    /// <summary>What the hull is adjusted to; null where it is not.</summary>
    public required TapeRows? Taped { get; init; }

    private readonly List<MeasuredKeelHalfWidth> halfWidths = [];
    private readonly List<MeasuredGirth> girths = [];
    private readonly List<MeasuredSeam> seams = [];
    private readonly List<TapeReading> readings = [];
    private readonly Dictionary<string, int> seen = [];

    public AsBuiltSpec Spec =>
        AsBuiltSpec.None with
        {
            KeelHalfWidths = [.. halfWidths],
            Girths =
            [
                .. girths
                    .GroupBy(g => (g.Station, g.Side))
                    .Select(g =>
                        g.Count() == 1 ? g.First() : g.First() with { Mm = g.Average(m => m.Mm) }
                    ),
            ],
            Seams = [.. seams],
            Readings = [.. readings],
        };

    public void Take(CsvRow row)
    {
        if (row.Cells.Length != 4)
        {
            Fault(
                row,
                1,
                string.Join(',', row.Cells),
                $"a row has four cells, what, where, side and value; this one has {row.Cells.Length}"
            );
            return;
        }

        if (Taped is not null && row.Cells[3].Length == 0)
        {
            // A row of the blanks that nobody has read yet.
            return;
        }

        string what = row.Cells[0].ToLowerInvariant(),
            where = row.Cells[1];
        if (TapeRows.KindOf(what) is { } kind && what != Girth)
        {
            OnTheHull(row, kind);
            return;
        }

        if (!Kinds.Contains(what))
        {
            string[] kinds = Taped is null ? Kinds : [.. Kinds.Union(TapeRows.Words)];
            string near = NearestName.Of(what, kinds) is { } word
                ? $": did you mean {Quoted.Of(word)}?"
                : ".";
            Fault(
                row,
                1,
                row.Cells[0],
                $"is not measured here{near} Accepted: {string.Join(", ", kinds)}"
            );
            return;
        }

        Side? side = row.Cells[2].ToLowerInvariant() switch
        {
            "starboard" => Side.Starboard,
            "port" => Side.Port,
            _ => null,
        };
        if (side is null)
        {
            Fault(row, 3, row.Cells[2], "accepted: starboard or port");
        }

        LengthReading length = LengthNotation.Read(row.Cells[3], units);
        if (length.Fault is { } fault)
        {
            Fault(row, 4, row.Cells[3], $"{fault}; {LengthNotation.AcceptedInList(units)}");
        }
        else if (what is HalfWidth or Girth && length.Mm <= 0)
        {
            Fault(row, 4, row.Cells[3], "must be greater than 0");
            return;
        }

        string place = string.Join('/', where.Split('/', StringSplitOptions.TrimEntries)),
            same = $"{what}|{place}|{side}";
        bool again = Taped is not null && what == Girth;
        if (side is not null && !again && !seen.TryAdd(same, row.Line))
        {
            Fault(
                row,
                2,
                where,
                $"is measured in line {seen[same]} already: keep the reading that you trust"
            );
            return;
        }

        switch (what)
        {
            case HalfWidth:
                HalfWidthOf(row, where, side, length);
                break;
            case Girth:
                if (
                    Station(row, where, where)
                    && side is { } s
                    && length.Ok
                    && Within(row, Tape.Girth(where, length.Mm, Shown))
                )
                {
                    girths.Add(new(where, s, length.Mm));
                    if (Taped is { } taped)
                    {
                        readings.Add(taped.Girth(where, s, length.Mm));
                    }
                }

                break;
            default:
                SeamOf(row, what, where, side, length);
                break;
        }
    }

    /// <summary>A reading of a kind that only says something where the hull is adjusted to it.</summary>
    private void OnTheHull(CsvRow row, TapeKind kind)
    {
        if (Taped is not { } taped)
        {
            Fault(
                row,
                1,
                row.Cells[0],
                "is taken into account only where the job has [trust], which says how far table and tape are trusted: add [trust] to the job, or take the row out"
            );
            return;
        }

        (TapeReading? reading, TapeFault? fault) = taped.Read(kind, row.Cells, plankLayers);
        if (fault is { } f)
        {
            Fault(row, f.Column, row.Cells[f.Column - 1], f.Message);
        }
        else
        {
            readings.Add(reading!);
        }
    }

    private void HalfWidthOf(CsvRow row, string where, Side? side, LengthReading length)
    {
        int slash = Stroke(where);
        if (slash <= 0 || slash == where.Length - 1)
        {
            Fault(
                row,
                2,
                where,
                "give the keel layer and the station with a stroke between: first layer/3"
            );
            return;
        }

        string layer = where[..slash].Trim(),
            station = where[(slash + 1)..].Trim();
        bool known = keelLayers.Contains(layer);
        if (!known)
        {
            Fault(
                row,
                2,
                where,
                keelLayers.IsEmpty
                    ? "the job names no [[keel-layer]]"
                    : $"no keel layer has the name {Quoted.Of(layer)}; there is {string.Join(", ", keelLayers.Select(Quoted.Of))}"
            );
        }

        if (
            Station(row, where, station)
            && known
            && side is { } s
            && length.Ok
            && Within(row, Tape.HalfWidth(station, length.Mm, Shown))
        )
        {
            halfWidths.Add(new(layer, station, s, length.Mm));
        }
    }

    /// <summary>The stroke between layer and station: both may have strokes of their own, so the one with a known name on either side, else the last.</summary>
    private int Stroke(string where)
    {
        for (int at = where.IndexOf('/'); at >= 0; at = where.IndexOf('/', at + 1))
        {
            string station = where[(at + 1)..].Trim();
            if (
                keelLayers.Contains(where[..at].Trim())
                && table.Stations.Any(s => s.Name == station)
            )
            {
                return at;
            }
        }

        return where.LastIndexOf('/');
    }

    private void SeamOf(CsvRow row, string what, string id, Side? side, LengthReading length)
    {
        if (PlankId.Parse(id) is not { } plank)
        {
            Fault(row, 2, id, $"is not a plank's number: {PlankIds.Accepted}");
            return;
        }

        if (plank.Panel != PlankId.Bottom)
        {
            Fault(
                row,
                2,
                id,
                "is no plank of the bottom: seams as measured are taken up on the bottom only; where planks of another panel are sawn or fitted, name them with `plankfit sawn` or under [as-built] fitted"
            );
            return;
        }

        if (plank.Layer > plankLayers)
        {
            Fault(row, 2, id, $"the job has {NumberText.Count(plankLayers, "layer")} of planks");
            return;
        }

        Side of = plank.Side;
        if (side is { } s && s != of)
        {
            Fault(
                row,
                3,
                row.Cells[2],
                $"{id} is to {(of == Side.Starboard ? "starboard" : "port")}: one of the two is wrong"
            );
            return;
        }

        if (side is not null && length.Ok && Within(row, Tape.Along(length.Mm, Shown)))
        {
            seams.Add(
                new(plank, what == SeamAtKeel ? PanelEdge.Lower : PanelEdge.Upper, length.Mm)
            );
        }
    }

    private bool Within(CsvRow row, string? beyond)
    {
        if (beyond is not null)
        {
            Fault(row, 4, row.Cells[3], beyond);
        }

        return beyond is null;
    }

    private bool Station(CsvRow row, string written, string station)
    {
        if (table.Stations.Any(s => s.Name == station))
        {
            return true;
        }

        Fault(
            row,
            2,
            written,
            $"the table has no station {Quoted.Of(station)}; it has {string.Join(", ", table.Stations.Select(s => s.Name))}"
        );
        return false;
    }

    private void Fault(CsvRow row, int column, string written, string message) =>
        findings.Add(
            new(
                Severity.Error,
                FormattableString.Invariant(
                    $"{file}, line {row.Line}, column {column} ({MeasuredText.Columns[column - 1]})"
                ),
                $"{Quoted.Of(written)}: {message}"
            )
        );
}
