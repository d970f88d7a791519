@"%~dp0program\plankfit.exe" %*
