using System.Collections.Immutable;
using System.Globalization;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Glue;
using PlankFit.Planking.Layers;
using PlankFit.Reading.AsBuilt;
using PlankFit.Reading.Text;

namespace PlankFit.Reading.Glue;

/// <summary>progress.csv: a plank or a run of planks that is down, or a side of a cloth that is wetted out, a row, with when, in which batch and how warm it was.</summary>
public static class ProgressText
{
    public const string UsualName = "progress.csv";

    private static readonly string[] Columns = ["id", "done-at", "batch", "temperature"];

    private const string IdAccepted =
        "a plank's number, S1-10, a run of them, S1-08..S1-12, a layer of cloth with its side, core cloth starboard, or a coat over it, outside cloth coat 1 starboard, or a side of what is laid last, fairing starboard, fillet chine log starboard";
    private const string TimeAccepted =
        "accepted: day and hour as on the sheets, day 2, 11:57, in quotes, or without its comma";

    private const int MostCoats = 9;

    /// <param name="layers">The bottom's.</param>
    public static (GlueProgress Progress, ImmutableArray<Finding> Findings) Read(
        string text,
        string file,
        ImmutableArray<LayerSpec> layers
    )
    {
        List<Finding> findings = [];
        ImmutableArray<CsvRow> rows = CsvRows.Read(text, file, findings);
        int[] places = rows.IsEmpty ? [] : [.. Columns.Select(c => rows[0].Cells.IndexOf(c))];
        if (rows.IsEmpty || places[0] < 0 || places[1] < 0)
        {
            findings.Add(
                new(
                    Severity.Error,
                    $"{file}, line 1",
                    "its first line names the columns: id,done-at,batch,temperature; the first two are needed"
                )
            );
            return (GlueProgress.None, [.. findings]);
        }

        ImmutableArray<GlueDone>.Builder done = ImmutableArray.CreateBuilder<GlueDone>();
        foreach (CsvRow row in rows.Skip(1).Where(r => !r.IsBlank))
        {
            string Cell(int column) =>
                places[column] >= 0 && places[column] < row.Cells.Length
                    ? row.Cells[places[column]]
                    : "";
            void Wrong(int column, string what) =>
                findings.Add(
                    new(
                        Severity.Error,
                        FormattableString.Invariant($"{file}, line {row.Line}, {Columns[column]}"),
                        $"{Quoted.Of(Cell(column))}: {what}"
                    )
                );

            double? at = Moment(Cell(1));
            if (at is null)
            {
                Wrong(1, TimeAccepted);
            }

            double? celsius = Cell(3).Length == 0 ? null : Temperatures.Read(Cell(3));
            if (Cell(3).Length > 0 && celsius is null)
            {
                Wrong(3, Temperatures.Accepted);
            }

            ImmutableArray<GlueDone> what = Of(Cell(0), layers);
            if (what.IsEmpty)
            {
                Wrong(0, IdAccepted);
            }

            done.AddRange(
                what.Select(d => d with { At = at ?? 0, Batch = Cell(2), Celsius = celsius })
            );
        }

        return (new(done.ToImmutable()), [.. findings]);
    }

    private static ImmutableArray<GlueDone> Of(string id, ImmutableArray<LayerSpec> layers)
    {
        (ImmutableArray<PlankId> planks, _) = PlankIds.Expand(id);
        if (!planks.IsEmpty)
        {
            return [.. planks.Select(p => new GlueDone(p, null, p.Side, 0))];
        }

        return Part(id, layers) is { } part ? [part] : [];
    }

    /// <summary>Cloth, a coat over it, fairing or a fillet by its name, with no hour; null where it is none of them.</summary>
    /// <param name="layers">The bottom's.</param>
    public static GlueDone? Part(string id, ImmutableArray<LayerSpec> layers)
    {
        foreach (ClothLayerSpec cloth in layers.OfType<ClothLayerSpec>())
        {
            foreach (Side side in new[] { Side.Starboard, Side.Port })
            {
                for (int coat = 0; coat <= MostCoats; coat++)
                {
                    var part = new GlueDone(null, cloth.Name, side, 0) { Coat = coat };
                    if (id.Equals(part.Name, StringComparison.OrdinalIgnoreCase))
                    {
                        return part;
                    }
                }
            }
        }

        return Finish(id);
    }

    /// <summary>A side of fairing, or of a fillet by what it runs along; whether the job has it is told with the plan.</summary>
    private static GlueDone? Finish(string id)
    {
        foreach (Side side in new[] { Side.Starboard, Side.Port })
        {
            string end = side == Side.Port ? " port" : " starboard";
            if (
                id.EndsWith(end, StringComparison.OrdinalIgnoreCase)
                && id[..^end.Length].Trim() is var stage
                && (
                    stage.Equals(FairingSpec.Stage, StringComparison.OrdinalIgnoreCase)
                    || stage.StartsWith(FilletSpec.StageOf(""), StringComparison.OrdinalIgnoreCase)
                )
            )
            {
                return new(null, null, side, 0) { Finish = stage };
            }
        }

        return null;
    }

    /// <summary>Minutes of "day 2, 11:57".</summary>
    private static double? Moment(string text)
    {
        string[] words = text.Split([' ', ','], StringSplitOptions.RemoveEmptyEntries);
        return
            words is ["day" or "Day", var day, var hour]
            && int.TryParse(day, NumberStyles.None, CultureInfo.InvariantCulture, out int d)
            && d is >= 1 and < 10_000
            && CrewBinder.Hour(hour) is { } minute
            ? ((d - 1) * 1440) + minute
            : null;
    }
}
