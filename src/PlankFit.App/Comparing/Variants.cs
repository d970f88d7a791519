using System.Collections.Immutable;
using System.Text;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Units;
using PlankFit.Reading.Editing;
using PlankFit.Reading.Keys;
using PlankFit.Reading.Panels;
using PlankFit.Reading.Ranges;
using PlankFit.Reading.Text;

namespace PlankFit.App.Comparing;

/// <summary>A job that is to be laid beside others: a file's text, changed or not.</summary>
/// <param name="Number">0 for the job as it stands.</param>
internal sealed record Variant(
    int Number,
    string Name,
    ImmutableArray<(string Key, string Value)> Changed,
    string JobPath,
    TextFile Text
);

/// <summary>The texts of a job with every value of the given ranges in it, each with each.</summary>
internal static class Variants
{
    public const int Most = 1000;

    /// <summary>Nearer than this two values are one, mm or degrees.</summary>
    private const double Same = 1e-6;

    /// <summary>In the order in which they are named and told; the last changes fastest.</summary>
    private static readonly ImmutableArray<(JobKey Key, Func<CompareAsked, string?> Of)> Keys =
    [
        (LayerKeys.Angle, a => a.Angle),
        (LayerKeys.Width, a => a.Width),
        (LayerKeys.Master, a => a.Master),
        (LayerKeys.Heading, a => a.Heads),
    ];

    /// <param name="units">That the job is written in.</param>
    /// <returns>Those that differ from the job as it stands, numbered from 1.</returns>
    public static (ImmutableArray<Variant> Variants, ImmutableArray<Finding> Findings) Of(
        string jobPath,
        string text,
        LengthUnit units,
        CompareAsked asked
    )
    {
        (ImmutableArray<TextLayer> layers, ImmutableArray<Finding> found) = VariedLayers.Of(
            text,
            asked
        );
        List<Finding> findings = [.. found];
        List<(JobKey Key, ImmutableArray<RangeValue> Values)> ranges = [];
        foreach ((JobKey key, Func<CompareAsked, string?> of) in Keys)
        {
            if (of(asked) is { } written)
            {
                (ImmutableArray<RangeValue> values, ImmutableArray<Finding> ofRange) =
                    ValueRange.Read(key, written, units, asked.Mark + key.Name);
                findings.AddRange(ofRange);
                ranges.Add((key, values));
            }
        }

        double count = ranges.Aggregate(1.0, (n, r) => n * r.Values.Length);
        if (count > Most)
        {
            findings.Add(
                new(
                    Severity.Error,
                    string.Join(" ", ranges.Select(r => asked.Mark + r.Key.Name)),
                    $"these are {NumberText.Trimmed(count, 0)} lay-outs, and no more than {Most} are tried at once: take wider steps, or fewer values"
                )
            );
        }

        if (ranges.Count > 0 && layers.IsEmpty && findings.Count == 0)
        {
            findings.Add(
                new(
                    Severity.Error,
                    Path.GetFileName(jobPath),
                    "has no table [[layer]] of planks whose values could be varied"
                )
            );
        }

        if (ranges.Count == 0 || findings.Any(f => f.Severity == Severity.Error))
        {
            return ([], [.. findings]);
        }

        ImmutableArray<Variant>.Builder variants = ImmutableArray.CreateBuilder<Variant>();
        foreach (ImmutableArray<(JobKey Key, RangeValue Value)> each in Each([.. ranges]))
        {
            if (each.All(v => Stands(v.Key, v.Value, layers, units)))
            {
                continue;
            }

            (JobKey Key, string Typed)[] values = [.. each.Select(v => (v.Key, v.Value.Typed))];
            string changed = values.Aggregate(text, (t, v) => With(t, layers, v.Key, v.Typed));
            if (changed != text)
            {
                variants.Add(
                    new(
                        variants.Count + 1,
                        string.Join(", ", values.Select(v => Named(v.Key, v.Typed, units))),
                        [.. values.Select(v => (v.Key.Name, v.Typed))],
                        jobPath,
                        TextFile.Decode(Encoding.UTF8.GetBytes(changed), Path.GetFileName(jobPath))
                    )
                );
            }
        }

        return (variants.ToImmutable(), [.. findings]);
    }

    /// <summary>The text with that value in every one of the layers. Which way planks head is said of the first: layers that cross it go on crossing it.</summary>
    public static string With(
        string text,
        ImmutableArray<TextLayer> layers,
        JobKey key,
        string typed
    ) =>
        layers.Aggregate(
            text,
            (t, layer) =>
                JobChange.Of(
                    t,
                    $"{layer.Table}.{key.Name}",
                    key == LayerKeys.Heading && layer.Heads != layers[0].Heads
                        ? key.Words.First(w => w != typed)
                        : typed
                ) ?? t
        );

    /// <summary>Whether all the layers have that value already, however it is written there.</summary>
    private static bool Stands(
        JobKey key,
        RangeValue value,
        ImmutableArray<TextLayer> layers,
        LengthUnit units
    ) =>
        key == LayerKeys.Heading
            ? layers[0].Heads == value.Typed
            : layers.All(l =>
                l.Written.GetValueOrDefault(key.Name) is { } written
                && ValueRange.Read(key, written, units, "").Values is [var there]
                && Math.Abs(there.Figure - value.Figure) < Same
            );

    private static IEnumerable<ImmutableArray<(JobKey Key, RangeValue Value)>> Each(
        ImmutableArray<(JobKey Key, ImmutableArray<RangeValue> Values)> ranges
    ) =>
        ranges.IsEmpty
            ?
            [
                [],
            ]
            : Each(ranges[..^1])
                .SelectMany(before =>
                    ranges[^1].Values.Select(v => before.Add((ranges[^1].Key, v)))
                );

    private static string Named(JobKey key, string typed, LengthUnit units) =>
        key switch
        {
            NumberKey => $"{key.Name} {typed}°",
            LengthKey
                when WrittenValue.Number(typed.TrimStart('-')) is not null
                    && units != LengthUnit.FeetInchesEighths =>
                $"{key.Name} {typed} {LengthUnits.Name(units)}",
            _ => $"{key.Name} {typed}",
        };
}
