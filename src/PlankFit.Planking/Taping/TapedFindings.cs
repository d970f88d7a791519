using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Seams;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.Taping;

/// <summary>What a person should know of what the tape said.</summary>
internal static class TapedFindings
{
    /// <summary>A correction further from any reading is told where it is greater than any at one, by so much, mm: our own bound, no source.</summary>
    private const double BeyondMm = 1;

    public static IEnumerable<Finding> Of(
        PlankingJob job,
        TapedHull hull,
        IEnumerable<TapeReading> leftOut,
        IReadOnlyCollection<PlankId> asTaped
    )
    {
        string Mm(double mm) => LengthText.ForPaper(Math.Abs(mm), job.Units, RoundTo.Up);
        foreach (TapeReading reading in leftOut)
        {
            yield return new(
                Severity.Warning,
                About(reading.Place),
                "no edge of this name runs from keel to chine on the bottom as drawn: the reading is left out"
            );
        }

        if (asTaped.Count > 0)
        {
            yield return new(
                Severity.Warning,
                "measured.csv",
                $"the frames as taped are laid with other planks than the table, and {string.Join(", ", asTaped)}, of which an edge was taped, {(asTaped.Count == 1 ? "is" : "are")} taken to be what the sheets after taping call so. Where the plank on the hull was sawn by an older sheet, take its reading out: it is another plank now"
            );
        }

        foreach (TapedRow slip in hull.Slips)
        {
            yield return OfSlip(job, hull, slip);
        }

        if (hull.AllCounted is { } counted)
        {
            yield return new(
                Severity.Note,
                "measured.csv",
                $"counted for less instead of put aside, {(hull.Slips.Count() == 1 ? "it" : "they")} would move no number of the table by more than {Mm(counted.ByMm)} ({counted.Cell}): that much hangs on measuring again"
            );
        }

        if (hull.Whole is { IsWithin: false, Readings: > 0 } whole)
        {
            yield return new(
                Severity.Warning,
                Subject.Of("measured.csv") with
                {
                    Key = "trust",
                },
                $"the readings as a whole lie further from the table than [trust] allows 19 times in 20: it is too hopeful for this hull. All that it says of table and frames is widened by {NumberText.Trimmed(Math.Sqrt(whole.Scale), 1)} here, and so is how sure every number is; look at the frames, and at [trust]"
            );
        }

        TapedCell[] wild = [.. hull.Cells.Where(c => c.IsWild)];
        string[] unasked =
        [
            .. wild.Select(c => c.Name).Where(n => !job.AsBuilt.AsMeasured.Contains(n)).Distinct(),
        ];
        foreach (TapedCell cell in wild.Where(c => unasked.Contains(c.Name)))
        {
            yield return new(
                Severity.Warning,
                $"{cell.Name}, {Word(cell.Side)}",
                $"the readings would move it by {Mm(cell.ByMm)}, which is no frame a little out: nothing is planked to what the tape said. Tape it again; if it is so, say it in the job: [as-built] as-measured = [\"{cell.Name}\"]"
            )
            {
                Rank = Rank.DoNotSaw,
            };
        }

        if (hull.Tables is not null)
        {
            string said = $"the hull is adjusted to {Count(hull.Whole.Readings)}";
            yield return new(
                Severity.Note,
                "measured.csv",
                hull.Cells.MaxBy(c => Math.Abs(c.ByMm)) is { } most
                    ? $"{said}: the most at {most.Name}, {Word(most.Side)}, by {Mm(most.ByMm)}; planks are cut to the hull as it stands"
                    : $"{said}: it stands as drawn"
            );
            foreach (Finding beyond in Overshoot(job, hull, Mm))
            {
                yield return beyond;
            }
        }
    }

    /// <summary>Planks that were offered up and do not fit say nothing of the hull by themselves.</summary>
    public static IEnumerable<Finding> OfferedUp(AsBuiltSpec standing, Planked planked)
    {
        PlankId[] named =

            [
                .. standing
                    .Readings.Where(r => r.Place.IsOfAPlankOfferedUp)
                    .Select(r => r.Place.Edge!.Value.Plank)
                    .Distinct()
                    .Order(),
            ],
            planks = [.. named.Where(p => planked.Find(p) is not null)];
        foreach (PlankId none in named.Except(planks))
        {
            PlankLayerPlan? layer = planked.PlankLayers.FirstOrDefault(l => l.Number == none.Layer);
            yield return new(
                Severity.Warning,
                $"measured.csv, {none}",
                layer is null
                    ? "no layer has this number: what is said of the plank is left out; name one of the list"
                    : $"the layer has no such plank, only {layer.Starboard[0].Number:00} to {layer.Starboard[^1].Number:00}: what is said of it is left out; name one of the list"
            );
        }

        if (planks.Length > 0)
        {
            yield return new(
                Severity.Note,
                "measured.csv",
                $"{string.Join(", ", planks)} {(planks.Length == 1 ? "was" : "were")} offered up: `plankfit trust` tells the likeliest causes; no plank is laid otherwise for it"
            );
        }
    }

    /// <summary>Where the hull as taped is laid out otherwise than the table: other planks, and not the same ones a little longer.</summary>
    internal static IEnumerable<Finding> OtherChoices(Planked planked)
    {
        foreach (
            LaidLayer layer in planked.Workings?.Layers.Where(l => l.From.AsDrawn is not null) ?? []
        )
        {
            SeamRow now = layer.Row,
                drawn = layer.From.AsDrawn!.Row;
            if (now.Held || SeamChoices.AreSame(layer, layer.From.AsDrawn!))
            {
                continue;
            }

            yield return new(
                Severity.Warning,
                Subject.OfLayer(layer.Spec.Name, layer.From.Side),
                $"the hull as taped is laid with other planks than the table: {now.Planks} for {drawn.Planks}, {now.Tapered.Count} tapered for {drawn.Tapered.Count}, or its master elsewhere. Sheets of the table as drawn no longer go with it: mark none of it as sawn by them"
            );
        }
    }

    private static Finding OfSlip(PlankingJob job, TapedHull hull, TapedRow slip)
    {
        string Read(double mm) => LengthText.ForPaper(mm, job.Units);
        TapedRow[] twins =
        [
            .. hull.Rows.Where(r => r != slip && r.Reading.Place.Equals(slip.Reading.Place)),
        ];
        bool apart =
            twins is [{ IsKept: false } other] && Math.Sign(other.Held.W) != Math.Sign(slip.Held.W);
        string said =
            apart && twins is [var twin]
                ? $"it was read as {Read(slip.Reading.Mm)} and as {Read(twin.Reading.Mm)}, and nothing else says which is the slip: both are put aside. Read it a third time"
                : $"it was read as {Read(slip.Reading.Mm)}, which all else has at about {Read(slip.Reading.Mm - slip.Held.Slip)}: one good reading in a thousand stands out so far, if [trust] is right. It is put aside; measure it again";
        return new(Severity.Warning, About(slip.Reading.Place), said);
    }

    /// <summary>Where a line is moved further, away from every reading, than at any of them.</summary>
    private static IEnumerable<Finding> Overshoot(
        PlankingJob job,
        TapedHull hull,
        Func<double, string> mm
    )
    {
        HashSet<string> read =
        [
            .. hull
                .Rows.Where(r => r.IsKept)
                .SelectMany(r => r.Reading.Place.Points)
                .Select(p => p.Station),
        ];
        if (read.Count == 0)
        {
            yield break;
        }

        foreach (
            IGrouping<(Side, string), TapedCell> line in hull
                .Cells.Where(c => !c.Name.StartsWith("position/", StringComparison.Ordinal))
                .GroupBy(c => (c.Side, c.Name[..c.Name.LastIndexOf('/')]))
        )
        {
            TapedCell[] at =

                [
                    .. line.Where(c =>
                        job.Offsets.Stations.Any(s =>
                            read.Contains(s.Name)
                            && c.Name.EndsWith("/" + s.Name, StringComparison.Ordinal)
                        )
                    ),
                ],
                off = [.. line.Except(at)];
            double most = at.Select(c => Math.Abs(c.ByMm)).DefaultIfEmpty(0).Max();
            if (
                off.MaxBy(c => Math.Abs(c.ByMm)) is { } worst
                && Math.Abs(worst.ByMm) > most + BeyondMm
            )
            {
                yield return new(
                    Severity.Warning,
                    $"{worst.Name}, {Word(worst.Side)}",
                    $"it is moved by {mm(worst.ByMm)}, more than any point of its line that was taped, which moved by {mm(most)} at most: tape it too before planks are sawn to it"
                );
            }
        }
    }

    public static string About(TapePlace place) =>
        $"{place.What}, {place.Where}{(place.Side is { } s ? $", {Word(s)}" : "")}";

    private static string Count(int n) => n == 1 ? "the one reading" : $"{n} readings of the tape";

    private static string Word(Side side) => side == Side.Starboard ? "starboard" : "port";
}
