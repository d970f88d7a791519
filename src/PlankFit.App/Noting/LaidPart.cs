using System.Globalization;

namespace PlankFit.App.Noting;

/// <summary>
/// What is laid that is no plank, as the journal has it: a side of cloth, of a coat, of fairing or of a fillet, by its name in progress.csv. Its state is "laid" with the day and
/// the hour at which it was, which need not be those of the note: what is planned on it goes by them.
/// </summary>
public static class LaidPart
{
    private const string Laid = "laid ",
        Form = "yyyy-MM-dd HH:mm";

    private const int LongestName = 120;

    /// <summary>Whether anything may be called so; whether the job has it is told where the rest is planned.</summary>
    public static bool IsName(string name) =>
        name.Length <= LongestName
        && !name.Any(char.IsControl)
        && new[] { " starboard", " port" }.Any(s =>
            name.EndsWith(s, StringComparison.Ordinal) && name[..^s.Length].Trim().Length > 0
        );

    /// <summary>When it was laid; null where the state says no such thing.</summary>
    public static DateTime? MomentOf(string state) =>
        state.StartsWith(Laid, StringComparison.Ordinal)
        && DateTime.TryParseExact(
            state[Laid.Length..],
            Form,
            CultureInfo.InvariantCulture,
            DateTimeStyles.None,
            out DateTime moment
        )
            ? moment
            : null;
}
