namespace PlankFit.Tests.Support;

/// <summary>
/// How much chance is drawn: little by default, so many times that as PLANKFIT_DRAWS says (planted faults are looked for with four times as much), much where
/// PLANKFIT_LONG=1 asks for it, and as much as CsCheck_Iter says where it says.
/// </summary>
internal static class LongRuns
{
    public static bool Asked => Environment.GetEnvironmentVariable("PLANKFIT_LONG") == "1";

    /// <summary>Where more is asked for than by default: long runs, and where faults are planted. Draws on which faults were found once are drawn again there.</summary>
    public static bool More => Asked || Times > 1;

    /// <summary>What CsCheck_Iter says.</summary>
    public static int? Said =>
        int.TryParse(Environment.GetEnvironmentVariable("CsCheck_Iter"), out int draws)
            ? draws
            : null;

    private static int Times =>
        int.TryParse(Environment.GetEnvironmentVariable("PLANKFIT_DRAWS"), out int times)
            ? times
            : 1;

    /// <summary>The first case of a theory by default, all of them where long runs are asked for.</summary>
    public static TheoryData<T> FirstOf<T>(params T[] cases) => Asked ? [.. cases] : [cases[0]];

    public static int Of(int usual, int asked) => Said ?? (Asked ? asked : Times * usual);
}
