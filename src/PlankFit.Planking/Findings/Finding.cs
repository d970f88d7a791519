using System.Collections.Immutable;

namespace PlankFit.Planking.Findings;

public enum Severity
{
    Note,
    Warning,
    Error,
}

/// <summary>Something a person should know: what it is about and what to do about it.</summary>
/// <remarks>Messages quote what stands in people's files: both texts are plain, so that a file cannot steer the terminal or the sheet that shows them.</remarks>
public sealed record Finding(Severity Severity, Subject About, string Message)
{
    public string Message
    {
        get;
        init => field = PlainText.Of(value);
    } = PlainText.Of(Message);

    /// <summary>
    /// What it costs to saw without having read this, by which it is told before others. Where it is made without one, a warning is to be seen to before
    /// sawing and a note is to be known.
    /// </summary>
    public Rank Rank { get; init; } =
        Severity switch
        {
            Severity.Error => Rank.DoNotSaw,
            Severity.Warning => Rank.SawAfter,
            _ => Rank.Know,
        };

    /// <summary>
    /// A figure that was read or written wrongly, it may be, and what else is found may come of it: told before all others, with the gravest of them.
    /// </summary>
    public bool IsCause { get; init; }

    /// <summary>Causes with the rank of the gravest of all, since what is grave may come of them; a plank for which no board is long enough may be as long by a wrong figure.</summary>
    public static ImmutableArray<Finding> CausesRaised(ImmutableArray<Finding> findings)
    {
        if (!findings.Any(f => f.IsCause))
        {
            return findings;
        }

        Rank most = findings.Max(f => f.Rank),
            gravest = most == Rank.BuyFirst ? Rank.DoNotSaw : most;
        return [.. findings.Select(f => f.IsCause ? f with { Rank = gravest } : f)];
    }

    /// <summary>What it is about in words, with file and line or cell where it has them.</summary>
    public string Where => PlainText.Of(About.ToString());
}
