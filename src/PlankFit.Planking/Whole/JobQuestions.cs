using System.Globalization;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.Whole;

/// <summary>What may well be meant as it stands in a job, but is more often a slip: asked, and laid as it stands. What is usual is common practice, no source.</summary>
public static class JobQuestions
{
    private const double UsualDegrees = 45;

    /// <summary>As far from the usual an angle is nothing out of the way: our own bound, no source.</summary>
    private const double OddDegrees = 10;

    /// <summary>A layer further from all others of its panel is asked about: our own bound, no source.</summary>
    private const double ApartDegrees = 5;

    /// <summary>Of a spacing, by which stations are written to be even: our own bound, no source.</summary>
    private const double EvenPart = 0.01;

    /// <summary>Thicknesses that differ by less are one, mm: our own bound, no source.</summary>
    private const double SameMm = 0.25;

    /// <summary>Few hulls that are planked like this are shorter or longer, m: our own bounds, no source.</summary>
    private const double ShortestMetres = 1.5,
        LongestMetres = 30;

    public static IEnumerable<Finding> Of(Job job) =>
        job
            .Panels.Prepend(job.Planking)
            .SelectMany(p => OneDiagonal(p).Concat(Angles(p)))
            .Concat(Stations(job.Offsets, job.Units))
            .Concat(Size(job.Offsets, job.Units))
            .Concat(Topside(job));

    /// <summary>The corner at the chine is worked out for the topside that [setting-up] tells of, and another panel may be planked there.</summary>
    private static IEnumerable<Finding> Topside(Job job)
    {
        if (
            job.SettingUp?.Topside is not { } told
            || job.Panels.FirstOrDefault(p => p.Hull.Panel.Lower == job.Hull.Panel.Upper)
                is not { } planked
        )
        {
            yield break;
        }

        double mm = Stack.Of(planked).ThicknessMm;
        if (Math.Abs(mm - told.ThicknessMm) > SameMm)
        {
            yield return new(
                Severity.Warning,
                Subject.Of("setting-up") with
                {
                    Key = "setting-up.topside",
                },
                $"topside has thickness = {LengthText.ForPaper(told.ThicknessMm, job.Units)}, and the layers of the {planked.Hull.Panel.Name} come to {LengthText.ForPaper(mm, job.Units)}: the corner at the chine is worked out for the former; write what is right in both"
            );
        }
    }

    private static IEnumerable<Finding> OneDiagonal(PlankingJob panel)
    {
        PlankLayerSpec[] layers = [.. panel.Layers.OfType<PlankLayerSpec>()];
        if (layers.Length > 1 && layers.All(l => l.Heads == layers[0].Heads))
        {
            string heads = layers[0].Heads == Heads.Aft ? "aft" : "forward",
                other = layers[0].Heads == Heads.Aft ? "forward" : "aft";
            yield return new(
                Severity.Note,
                Subject.OfLayer(layers[1].Name) with
                {
                    Key = "layer.heads",
                },
                $"{(layers.Length == 2 ? "both" : $"all {layers.Length}")} skins of the {panel.Hull.Panel.Name} head {heads}, on one diagonal: is that meant? Skins usually cross, so that each holds the one below together; heads = \"{other}\" lays one the other way"
            );
        }
    }

    private static IEnumerable<Finding> Angles(PlankingJob panel)
    {
        PlankLayerSpec[] layers = [.. panel.Layers.OfType<PlankLayerSpec>()];
        foreach (PlankLayerSpec layer in layers)
        {
            bool odd = Math.Abs(layer.AngleDegrees - UsualDegrees) > OddDegrees,
                apart =
                    Math.Abs(layer.AngleDegrees - UsualDegrees) > ApartDegrees
                    && layers.Length > 1
                    && layers.All(l =>
                        l == layer || Math.Abs(l.AngleDegrees - layer.AngleDegrees) > ApartDegrees
                    );
            if (odd || apart)
            {
                yield return new(
                    Severity.Note,
                    Subject.OfLayer(layer.Name) with
                    {
                        Key = "layer.angle",
                    },
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"its planks are asked for at {layer.AngleDegrees:0.#} degrees{(apart ? ", and those of no other skin are" : "")}: is that meant? {UsualDegrees:0} is usual"
                    )
                );
            }
        }
    }

    /// <summary>A table that is read in another unit than it was written in gives no boat's length.</summary>
    private static IEnumerable<Finding> Size(OffsetTable table, LengthUnit unit)
    {
        double metres =
            (table.Stations.Max(s => s.PositionMm) - table.Stations.Min(s => s.PositionMm)) / 1000;
        if (metres is >= ShortestMetres and <= LongestMetres)
        {
            yield break;
        }

        yield return new(
            Severity.Warning,
            Subject.Of("offsets") with
            {
                Key = "job.units",
            },
            string.Create(
                CultureInfo.InvariantCulture,
                $"the stations of the table reach over {LengthText.ForPaper(1000 * metres, unit)}, which is {metres:0.##} m ({metres / 0.3048:0.#} ft): few boats planked like this are {(metres > LongestMetres ? "longer than" : "shorter than")} {(metres > LongestMetres ? LongestMetres : ShortestMetres):0.#} m. Is the table in the unit that [job] units says?"
            )
        )
        {
            Rank = Rank.DoNotSaw,
            IsCause = true,
        };
    }

    /// <summary>A row of stations that is even but for one gap of two spacings or more.</summary>
    private static IEnumerable<Finding> Stations(OffsetTable table, LengthUnit unit)
    {
        Station[] stations = [.. table.Stations.OrderBy(s => s.PositionMm)];
        double[] gaps =
        [
            .. stations.Zip(stations.Skip(1)).Select(s => s.Second.PositionMm - s.First.PositionMm),
        ];
        if (gaps.Length < 3)
        {
            yield break;
        }

        double even = gaps.Order().ElementAt(gaps.Length / 2 - (gaps.Length % 2 == 0 ? 1 : 0));
        int[] wide = [.. Enumerable.Range(0, gaps.Length).Where(i => !Is(gaps[i], 1))];
        if (wide is not [var at])
        {
            yield break;
        }

        int spacings = (int)Math.Round(gaps[at] / even);
        if (spacings >= 2 && Is(gaps[at], spacings))
        {
            yield return new(
                Severity.Note,
                Subject.Of("offsets"),
                $"the stations stand {LengthText.ForPaper(even, unit)} apart all along but between {stations[at].Name} and {stations[at + 1].Name}, where it is {LengthText.ForPaper(gaps[at], unit)}: is a station missing from the table there?"
            );
        }

        bool Is(double gap, int times) => Math.Abs(gap - (times * even)) <= EvenPart * even;
    }
}
