using BenchmarkDotNet.Running;
using PlankFit.Benchmarks;

// dotnet run -c Release --project tests/PlankFit.Benchmarks -- --filter '*' --job short
// dotnet run -c Release --project tests/PlankFit.Benchmarks -- what-cloth-adds [turns]
if (args is ["what-cloth-adds", ..])
{
    WhatClothAdds.Measure(args.Length > 1 ? int.Parse(args[1], null) : 7);
}
else
{
    BenchmarkSwitcher.FromAssembly(typeof(KernelBenchmarks).Assembly).Run(args);
}
