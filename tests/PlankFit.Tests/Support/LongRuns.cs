namespace PlankFit.Tests.Support;

/// <summary>How much chance is drawn: little by default, much where PLANKFIT_LONG=1 asks for it, and as much as CsCheck_Iter says where it says.</summary>
internal static class LongRuns
{
    public static bool Asked => Environment.GetEnvironmentVariable("PLANKFIT_LONG") == "1";

    public static int Of(int usual, int asked) =>
        int.TryParse(Environment.GetEnvironmentVariable("CsCheck_Iter"), out int draws) ? draws
        : Asked ? asked
        : usual;
}
