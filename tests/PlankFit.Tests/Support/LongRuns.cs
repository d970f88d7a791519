namespace PlankFit.Tests.Support;

/// <summary>How much chance is drawn: little by default, much where PLANKFIT_LONG=1 asks for it.</summary>
internal static class LongRuns
{
    public static bool Asked => Environment.GetEnvironmentVariable("PLANKFIT_LONG") == "1";

    public static int Of(int usual, int asked) => Asked ? asked : usual;
}
