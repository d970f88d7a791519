using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Units;
using PlankFit.Reading.Keys;
using PlankFit.Reading.Lengths;
using PlankFit.Reading.Text;

namespace PlankFit.Reading.Ranges;

/// <summary>A value to be tried.</summary>
/// <param name="Typed">As a person writes it into the job: 120, 5 1/2 in, aft.</param>
/// <param name="Figure">Lengths in mm; nought of a word.</param>
public readonly record struct RangeValue(string Typed, double Figure);

/// <param name="Values">Each once, in the order in which they stand in the range.</param>
/// <param name="Findings">Where one is an error the values are not to be used.</param>
public sealed record RangeReading(
    ImmutableArray<RangeValue> Values,
    ImmutableArray<Finding> Findings
);

/// <summary>
/// The values of one key that are to be tried, as somebody writes them: 100,120,150 or 40..50, a run of its own step 40..50:2, and both together. Lengths are written as in
/// the job. Both ends of a run are tried; without a step it has one that somebody would choose, so that there are no more than eleven values.
/// </summary>
public static class ValueRange
{
    /// <summary>Of one key.</summary>
    public const int Most = 200;

    /// <summary>How a run is written, for the end of a message.</summary>
    public const string Form =
        "accepted: values with commas between them, 100,120,150; a run, 40..50; a run with its step, 40..50:2";

    private const string Run = "..";

    /// <param name="key">One of a layer's.</param>
    /// <param name="units">Of the job.</param>
    /// <param name="option">How the range is called where it was written: "--width".</param>
    public static RangeReading Read(JobKey key, string written, LengthUnit units, string option)
    {
        List<RangeValue> values = [];
        List<Finding> findings = [];
        double? Figure(string typed)
        {
            (double? figure, ImmutableArray<Finding> found) = LayerValue.Of(
                key,
                typed,
                units,
                $"{option} {typed}"
            );
            findings.AddRange(found);
            return found.Any(f => f.Severity == Severity.Error) ? null : figure;
        }

        void Wrong(string what, string why) =>
            findings.Add(new(Severity.Error, $"{option} {what}", why));

        foreach (string part in written.Split(',').Select(p => p.Trim()))
        {
            if (part.Length == 0)
            {
                Wrong(Quoted.Of(written), $"a value is missing; {Form}");
                continue;
            }

            int dots = part.IndexOf(Run, StringComparison.Ordinal);
            if (dots < 0)
            {
                if (Figure(part) is { } figure)
                {
                    values.Add(new(part, key.Words.IsEmpty ? figure : key.Words.IndexOf(part)));
                }

                continue;
            }

            if (!key.Words.IsEmpty)
            {
                Wrong(
                    part,
                    $"words have nothing between them: name those to be tried, {string.Join(",", key.Words)}"
                );
                continue;
            }

            string[] end = part[(dots + Run.Length)..].Split(':');
            (string fromText, string toText) = (part[..dots].Trim(), end[0].Trim());
            if (fromText.Length == 0 || toText.Length == 0 || end.Length > 2)
            {
                Wrong(part, $"this is no run; {Form}");
                continue;
            }

            if (Figure(fromText) is not { } from || Figure(toText) is not { } to)
            {
                continue;
            }

            if (to <= from)
            {
                Wrong(part, $"a run goes from the lesser to the greater value; {Form}");
                continue;
            }

            LengthUnit? ofLength = key is LengthKey ? units : null;
            if (Step(end, from, to, ofLength) is not { } step)
            {
                Wrong(
                    part,
                    $"the step {Quoted.Of(end[1].Trim())} is not {(ofLength is null ? "a number" : "a length")} greater than 0; {(ofLength is null ? Form : LengthNotation.Accepted(units))}"
                );
                continue;
            }

            if (StepsOf.Count(from, to, step) > Most)
            {
                Wrong(part, $"these are more than {Most} values: take a wider step");
                continue;
            }

            values.AddRange(
                StepsOf
                    .Values(from, to, step)
                    .Select(
                        (v, i) =>
                            i == 0 ? new RangeValue(fromText, from)
                            : v == to ? new(toText, to)
                            : new(WrittenValue.Of(v, ofLength), v)
                    )
            );
        }

        if (values.Count > Most)
        {
            Wrong(Quoted.Of(written), $"these are more than {Most} values");
        }

        return new([.. values.DistinctBy(v => Math.Round(v.Figure, 6))], [.. findings.Distinct()]);
    }

    private static double? Step(string[] end, double from, double to, LengthUnit? units)
    {
        if (end.Length == 1)
        {
            return StepsOf.Usual(from, to, units);
        }

        double? step = units is { } u
            ? LengthNotation.Read(end[1], u) is { Ok: true } read
                ? read.Mm
                : null
            : WrittenValue.Number(end[1]);
        return step > 0 ? step : null;
    }
}
