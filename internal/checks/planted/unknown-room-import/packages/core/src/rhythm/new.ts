import '@shedbook/drums';
