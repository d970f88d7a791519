namespace PlankFit.Tests.Nesting;

/// <summary>The largest runs are asked for: with PLANKFIT_LONG=1 in the environment.</summary>
internal static class Long
{
    public static bool IsAsked => Environment.GetEnvironmentVariable("PLANKFIT_LONG") == "1";

    public static int Runs(int few, int many) => IsAsked ? many : few;
}
