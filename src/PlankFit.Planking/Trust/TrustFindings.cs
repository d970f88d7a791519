using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.Trust;

/// <summary>What a builder should know of how sure the planks are, and of what the figures do not know.</summary>
internal static class TrustFindings
{
    private const string If = "19 times in 20, if [trust] is right";

    /// <param name="taped">Whether the figures are those of the table and what was taped together.</param>
    public static IEnumerable<Finding> Of(
        TrustSpec spec,
        Planked planked,
        Sensitivities slopes,
        ImmutableArray<LayerTrust> layers,
        bool taped
    )
    {
        LengthUnit unit = planked.Job.Units;
        foreach ((LayerTrust layer, PlankLayerPlan plan) in layers.Zip(planked.PlankLayers))
        {
            if (Lengths(layer, unit) is { } lengths)
            {
                yield return Note(layer.Name, lengths);
            }

            foreach (Finding f in Ends(layer, plan, unit))
            {
                yield return f;
            }

            if (Sawn(layer, plan, unit) is { } sawn)
            {
                yield return sawn;
            }
        }

        foreach (string limit in Limits(spec, planked, slopes, taped))
        {
            yield return new(Severity.Note, Subject.Of("[trust]") with { Key = "trust" }, limit);
        }
    }

    private static string? Lengths(LayerTrust layer, LengthUnit unit)
    {
        PlankTrust[] told = [.. layer.Planks.Where(p => !p.InPlace).OrderBy(p => p.LengthMm)];
        if (told.Length == 0)
        {
            return "nothing can be told of how sure its lengths are: all its planks are to be fitted in place";
        }

        string middle = PlusMinus.Of(told[told.Length / 2].LengthMm!.Value, unit),
            worst = PlusMinus.Of(told[^1].LengthMm!.Value, unit);
        PlankTrust[] sure = [.. told.Where(p => p.MayFitBothEnds)];
        string which =
            sure.Length == 0 ? "none is sure enough to be sawn to fit at both ends"
            : sure.Length == told.Length ? "all are sure enough to be sawn to fit at both ends"
            : $"{string.Join(", ", sure.OrderBy(p => p.Id.Number).Select(p => p.Id))} are sure enough to be sawn to fit at both ends";
        return $"lengths are within {middle} at the middle plank and {worst} at the worst, {told[^1].Id}, {If}, with the master laid by its two seams' marks along keel and chine; {which}";
    }

    /// <summary>Planks that are sawn to fit at both ends, and ends that are left long by less than their length is out.</summary>
    private static IEnumerable<Finding> Ends(LayerTrust layer, PlankLayerPlan plan, LengthUnit unit)
    {
        (PlankTrust Trust, Plank Plank)[] all =
        [
            .. layer.Planks.Zip(plan.Starboard).Where(p => !p.First.InPlace && !p.Second.IsFixed),
        ];
        (PlankTrust Trust, Plank Plank)[] both = [.. all.Where(p => p.Plank.FitBothEnds)];
        (PlankTrust Trust, Plank Plank)[] shy =
        [
            .. both.Where(p => p.Plank.Ends.Max(e => e.AllowanceMm) < p.Trust.NoneShortMm),
        ];
        if (shy.Length > 0)
        {
            (PlankTrust worst, Plank plank) = shy.MaxBy(p => p.Trust.NoneShortMm);
            yield return new(
                Severity.Warning,
                Subject.OfLayer(layer.Name) with
                {
                    Key = "ends",
                },
                $"{Names(shy)}: {LengthText.ForPaper(plank.Ends.Max(e => e.AllowanceMm), unit)} to scribe is not enough that none comes short; {worst.Id} wants {LengthText.ForPaper(worst.NoneShortMm!.Value, unit, RoundTo.Up)}, {If}: raise `allowance`, or leave them long at one end"
            );
        }
        else if (both.Length > 0)
        {
            double most = both.Max(p => p.Trust.NoneShortMm!.Value);
            yield return Note(
                layer.Name,
                $"what {Names(both)} have to scribe is enough: none comes short by more than its allowance, {If}; the most that one wants is {LengthText.ForPaper(most, unit, RoundTo.Up)}"
            );
        }

        (PlankTrust Trust, Plank Plank)[] bare =
        [
            .. all.Where(p =>
                !p.Plank.FitBothEnds
                && LeftLongMm(p.Plank) is { } left
                && left < p.Trust.NoneShortMm
            ),
        ];
        if (bare.Length > 0)
        {
            PlankTrust worst = bare.MaxBy(p => p.Trust.NoneShortMm).Trust;
            yield return new(
                Severity.Warning,
                Subject.OfLayer(layer.Name) with
                {
                    Key = "ends",
                },
                $"{Names(bare)} {(bare.Length == 1 ? "is" : "are")} left long by less than keeps all of a side from coming short, {LengthText.ForPaper(worst.NoneShortMm!.Value, unit, RoundTo.Up)} in {worst.Id}, {If}: leave more"
            );
        }
    }

    /// <summary>What a sawn plank lacks, or has over, is as sure as the place of its end is: no piece is glued on by the figure alone.</summary>
    private static Finding? Sawn(LayerTrust layer, PlankLayerPlan plan, LengthUnit unit)
    {
        (PlankId Id, double? Mm)[] sawn =
        [
            .. plan
                .Starboard.Concat(plan.Port)
                .Where(p => p.IsSawn && !p.IsFitted)
                .Select(p =>
                    (
                        p.Id,
                        layer
                            .Planks.Where(t => t.Id == p.Id with { Side = Side.Starboard })
                            .SelectMany(t => new[] { t.InboardMm, t.OutboardMm })
                            .Max()
                    )
                ),
        ];
        if (sawn.Length == 0)
        {
            return null;
        }

        (PlankId worst, double? most) = sawn.MaxBy(p => p.Mm);
        PlankId[] unknown = [.. sawn.Where(p => p.Mm is null).Select(p => p.Id)];
        string within = most is { } mm
            ? $"is known within {PlusMinus.Of(mm, unit)} at the most, in {worst}, {If}"
                + (unknown.Length > 0 ? $"; of {PlankRuns.Of(unknown)} it is not known" : "")
            : "is not known";
        return new(
            Severity.Warning,
            Subject.OfLayer(layer.Name) with
            {
                Key = "trust",
            },
            $"{PlankRuns.Of(sawn.Select(p => p.Id))}, sawn: what an end of {(sawn.Length == 1 ? "it" : "one")} lacks or has over {within}: offer {(sawn.Length == 1 ? "it" : "each")} up to its place before a piece is glued on or it is sawn anew"
        );
    }

    /// <summary>By how much a plank is left long where it is least; null where it is nowhere.</summary>
    internal static double? LeftLongMm(Plank plank) => plank.Ends.Min(e => e.OverhangMm);

    private static string Names(IEnumerable<(PlankTrust Trust, Plank Plank)> planks) =>
        string.Join(", ", planks.Select(p => p.Trust.Id));

    private static IEnumerable<string> Limits(
        TrustSpec spec,
        Planked planked,
        Sensitivities slopes,
        bool taped
    )
    {
        PlankingJob job = planked.Job;
        double[] x =
        [
            .. slopes
                .Cells.Cells.Where(c => c.Kind == CellKind.Position)
                .Select(slopes.Cells.PositionOf)
                .Order(),
        ];
        double bay = x.Zip(x.Skip(1), (a, b) => b - a).Max();
        if (spec.Bends.Over * (x[^1] - x[0]) < bay)
        {
            yield return $"there are too few stations for bends-within: what is swollen over {NumberText.Trimmed(spec.Bends.Over, 2)} of the length is not seen by stations {LengthText.ForPaper(bay, job.Units)} apart, and is in no figure here; give `over` more, or the table more stations";
        }

        if (!job.Keel.Layers.IsEmpty)
        {
            yield return "where the planks meet a keel layer its side is taken to be planed to the planks as they come, or to be as its line or half-width says; a keel layer sawn wrong is in no figure here";
        }

        if (taped)
        {
            if (!job.AsBuilt.Fitted.IsEmpty || !job.AsBuilt.Sawn.IsEmpty)
            {
                yield return "of what was fitted or sawn nothing is in what is told of how sure planks are";
            }
        }
        else if (!job.AsBuilt.IsEmpty)
        {
            yield return "what is told of how sure planks are is told of the table alone, both sides alike, as if nothing were measured, fitted or sawn";
        }

        if (planked.PlankLayers.Any(l => l.Planks.Stagger is not null))
        {
            yield return "a layer that is staggered against the one below is taken to be laid by its own master's marks";
        }
    }

    private static Finding Note(string layer, string message) =>
        new(Severity.Note, Subject.OfLayer(layer) with { Key = "trust" }, message);
}
