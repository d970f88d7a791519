using Google.OrTools.LinearSolver;

namespace PlankFit.Tests.Nesting;

/// <summary>What keeps the solver's own words from the terminal is understood by it: a setting that it does not know is passed over in silence.</summary>
public sealed class SilentSolverTests
{
    [Theory]
    [InlineData("misc/catchctrlc = FALSE\n", true)]
    [InlineData("display/verblevel = 0\n", true)]
    [InlineData("misc/catchctrlx = FALSE\n", false)]
    public void TheSolverKnowsItsSettings(string setting, bool known)
    {
        using var solver = Solver.CreateSolver("SCIP");
        Assert.Equal(known, solver.SetSolverSpecificParametersAsString(setting));
    }
}
