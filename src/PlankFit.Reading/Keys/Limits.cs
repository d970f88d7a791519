using PlankFit.Planking.Units;

namespace PlankFit.Reading.Keys;

/// <summary>Between which values a figure must be; null where it may be anything that way.</summary>
/// <param name="Inclusive">The least itself will do.</param>
/// <param name="MostInclusive">The most itself will do.</param>
public sealed record Limits(double? Least, bool Inclusive, double? Most, bool MostInclusive)
{
    public static readonly Limits None = new(null, true, null, true);

    /// <summary>Greater than nought.</summary>
    public static readonly Limits Positive = MoreThan(0);

    /// <summary>Nought or more.</summary>
    public static readonly Limits NotNegative = AtLeast(0);

    public static Limits MoreThan(double least) => new(least, false, null, true);

    public static Limits AtLeast(double least) => new(least, true, null, true);

    public static Limits FromTo(double least, double most) => new(least, true, most, true);

    /// <summary>Neither end will do.</summary>
    public static Limits Within(double least, double most) => new(least, false, most, false);

    /// <summary>The same without the most itself.</summary>
    public Limits LessThan(double most) => this with { Most = most, MostInclusive = false };

    public Limits UpTo(double most) => this with { Most = most, MostInclusive = true };

    public bool Hold(double value) =>
        (Least is not { } least || (Inclusive ? value >= least : value > least))
        && (Most is not { } most || (MostInclusive ? value <= most : value < most));

    /// <summary>"more than 0 and less than 180"; null where anything will do.</summary>
    /// <param name="write">How a figure is written.</param>
    public string? InWords(Func<double, string> write)
    {
        string? least = Least is { } l ? (Inclusive ? "at least " : "more than ") + write(l) : null,
            most = Most is { } m ? (MostInclusive ? "at most " : "less than ") + write(m) : null;
        return least is null ? most
            : most is null ? least
            : $"{least} and {most}";
    }

    /// <summary>The text with the figures in the places {least} and {most}.</summary>
    public string Into(string text, Func<double, string> write)
    {
        string filled = Least is { } least ? text.Replace("{least}", write(least)) : text;
        return Most is { } most ? filled.Replace("{most}", write(most)) : filled;
    }

    /// <summary>A plain number.</summary>
    public static string Plain(double value) => NumberText.Trimmed(value, 9);
}

/// <summary>Beyond which figures a unit has most likely been mistaken; the job goes on, and is asked.</summary>
/// <param name="Words">What is asked; {value} is the figure, {most} the greatest that is not asked about.</param>
public sealed record Likely(double? Least, double? Most, string Words)
{
    /// <summary>The unit is asked after: all that is found of the job may come of it.</summary>
    public bool IsOfUnit { get; private init; }

    /// <param name="words">What is unlikely, without the question.</param>
    public static Likely OfUnit(double? least, double? most, string words) =>
        new(least, most, words + ": is the unit right?") { IsOfUnit = true };

    public bool Holds(double value) => !(value < Least) && !(value > Most);

    /// <summary>What is asked about a figure.</summary>
    public string About(double value, Func<double, string> write) =>
        (Most is { } most ? Words.Replace("{most}", write(most)) : Words).Replace(
            "{value}",
            write(value)
        );

    /// <summary>"less than 20 mm, more than 600 mm".</summary>
    public string InWords(Func<double, string> write) =>
        string.Join(
            ", ",
            new[]
            {
                Least is { } least ? $"less than {write(least)}" : null,
                Most is { } most ? $"more than {write(most)}" : null,
            }.OfType<string>()
        );
}
